import type { z } from 'zod'
import { plainMisfit } from './plain-misfit.js'
import { RequestFault } from './request-fault.js'

/** Most faults listed for one request. */
const MOST_FAULTS = 20

/** What was sent, as the schema makes it; a RequestFault lists every fault with its place otherwise. */
export function fitting<Schema extends z.ZodType>(
  schema: Schema, sent: unknown, code: 'BODY_DOES_NOT_FIT' | 'QUERY_DOES_NOT_FIT',
): z.output<Schema> {
  const read = schema.safeParse(sent, { error: plainMisfit })
  if (read.success) return read.data
  throw new RequestFault(code, {
    faults: read.error.issues.slice(0, MOST_FAULTS)
      .map(({ path, message }) => ({ at: path.map(String).join('.'), expected: message })),
  })
}
