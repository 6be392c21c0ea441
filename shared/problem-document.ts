import { z } from 'zod'
import { CaseView } from './case.js'

/** RFC 9457 problem document, with our extensions. */
export const ProblemDocument = z.object({
  type: z.string(), title: z.string(), status: z.number().int(), detail: z.string(),
  /** Closed code from the table in src/http/errors.ts. */
  code: z.string(),
  /** Id of the request in the service's log. */
  request: z.string(),
  /** For a body that does not fit: each fault with its place. */
  faults: z.array(z.object({ at: z.string(), expected: z.string() })).optional(),
  /** For a stale revision: the case as it stands now. */
  case: CaseView.optional(),
}).meta({ id: 'ProblemDocument' })

export type ProblemDocument = z.infer<typeof ProblemDocument>
