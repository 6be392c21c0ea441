import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'

const HERE = import.meta.dirname

const Labelled = z.strictObject({
  text: z.string().min(1),
  /** Everything that the words plainly say: each check with its answer, or with all of its answers that are said. */
  said: z.record(z.string(), z.array(z.string()).min(1)),
})

/** A question with everything that it plainly says. */
export type Labelled = z.infer<typeof Labelled>

/** One of the two fully labelled samples of held-back questions. The README beside it says how they were made. */
export async function readSample(name: 'first' | 'second'): Promise<readonly Labelled[]> {
  const text = await readFile(join(HERE, `${name}.jsonl`), 'utf8')
  return text.split('\n').filter((line) => line !== '').map((line) => Labelled.parse(JSON.parse(line)))
}
