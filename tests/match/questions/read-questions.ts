import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'

const HERE = import.meta.dirname

const Question = z.strictObject({
  text: z.string().min(1),
  host: z.string().nullable(),
  problems: z.array(z.string()).max(4),
  part: z.string().min(1),
  redFlags: z.array(z.string()),
  redFlagsAllowed: z.array(z.string()).optional(),
  findings: z.record(z.string(), z.string()),
  /** What the words also say, found by reading what was heard; tuning questions only. */
  alsoSaid: z.record(z.string(), z.string()).optional(),
  outOfScope: z.boolean(),
})

const Split = z.strictObject({ rule: z.string(), questions: z.number().int(), heldBack: z.array(z.string()) })

/** One question of the development set, with what counts as hearing it right. */
export type Question = z.infer<typeof Question>

/** Every question, file by file in name order. */
export async function readQuestions(): Promise<readonly Question[]> {
  const names = (await readdir(HERE)).filter((name) => name.endsWith('.jsonl')).sort()
  const texts = await Promise.all(names.map((name) => readFile(join(HERE, name), 'utf8')))
  return texts.flatMap((text) => text.split('\n').filter((line) => line !== '').map((line) => Question.parse(JSON.parse(line))))
}

/** The split as written down in split.json. */
export async function readSplit(): Promise<z.infer<typeof Split>> {
  return Split.parse(JSON.parse(await readFile(join(HERE, 'split.json'), 'utf8')))
}

/** Whether a question is held back from tuning: its 32-bit FNV-1a hash leaves no remainder when divided by three. */
export function isHeldBack(text: string): boolean {
  return fnv1a(text) % 3 === 0
}

/** 32-bit FNV-1a of the text's UTF-8 bytes. */
export function fnv1a(text: string): number {
  let hash = 0x811c9dc5
  for (const byte of Buffer.from(text, 'utf8')) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0
  return hash
}
