import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { parse } from 'yaml'
import { z } from 'zod'

const FOLDER = join(import.meta.dirname, '../../../trees/problems')

const Problem = z.looseObject({
  problem: z.string(),
  hosts: z.record(z.string(), z.string()),
  cost: z.string(),
  watch: z.looseObject({ escalate: z.string() }).optional(),
  advice: z.looseObject({ 'bottom line': z.string(), 'do now': z.array(z.string()) }),
})

/** One problem as written in `trees/problems`, with its whole text beside it. */
export type WrittenProblem = z.infer<typeof Problem> & { readonly text: string }

/** Every problem of the guide, by its id, read from its own file. Throws where a file has not the shape of a problem. */
export async function writtenProblems(): Promise<ReadonlyMap<string, WrittenProblem>> {
  const names = (await readdir(FOLDER)).filter((name) => /^[a-z0-9-]+\.yaml$/.test(name))
  const problems = await Promise.all(names.map(async (name) => {
    const text = await readFile(join(FOLDER, name), 'utf8')
    return { ...Problem.parse(parse(text)), text }
  }))
  return new Map(problems.map((problem) => [problem.problem, problem]))
}
