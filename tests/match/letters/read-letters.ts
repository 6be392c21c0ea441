import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'

const Letter = z.strictObject({
  text: z.string().min(1),
  host: z.string().nullable(),
  /** Red flags that must be raised, and such as may be: empty for a calm letter. */
  redFlags: z.array(z.string()),
  redFlagsAllowed: z.array(z.string()),
  /** What answers it, best first: a job first where one is asked for. Left out where nobody has said. */
  problems: z.array(z.string()).optional(),
})

/** A letter that somebody might send, invented, labelled by its words: see the README beside it. */
export type Letter = z.infer<typeof Letter>

/** Every letter of this folder, and of further files: letters that may not be published can be kept elsewhere. */
export async function readLetters(...further: readonly string[]): Promise<readonly Letter[]> {
  const files = ['dangers.jsonl', 'jobs.jsonl', 'troubles.jsonl', 'everyday.jsonl'].map((name) => join(import.meta.dirname, name))
  const texts = await Promise.all([...files, ...further].map((file) => readFile(file, 'utf8')))
  return texts.flatMap((text) => text.trim().split('\n').map((line) => Letter.parse(JSON.parse(line))))
}

/** Files of letters that are kept elsewhere, named in ALSO with a comma between them. */
export function lettersElsewhere(): readonly string[] {
  return (process.env['ALSO'] ?? '').split(',').filter((file) => file !== '')
}
