import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { buildMatchIndex, letterSignsIn, type MatchIndex, shareOf, signShare } from '../../src/match/index.js'
import { lettersElsewhere, readLetters } from '../match/letters/read-letters.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { fitSparse, oddsOf, type SparseExample, type SparseFit } from './fit-sparse.js'
import { mapLines } from './weights-file.js'

type Signs = readonly (readonly [number, number])[]

interface Letter {
  readonly text: string
  /** Jobs that answer it, best first; empty for trouble. */
  readonly jobs: readonly string[]
  readonly asks: Signs
  readonly kinds: Signs
  /** Phrases lead to many jobs each, so they only tell that a job is asked for. */
  readonly isPhrase: boolean
}

interface Model {
  readonly asks: SparseFit
  readonly kinds: ReadonlyMap<string, SparseFit>
}

/**
 * Fits the weights of src/match/job-weights.ts on the letters of tests/match/letters, the tuning two thirds of the
 * development questions, the casebook, the phrases that lead to jobs and what each problem is, and on further files of
 * letters named in ALSO (comma between them). Prints what letters kept out of five fits were heard as; with --write the
 * file is written.
 */
async function fitJobs(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const numbers = new Map<string, number>()
  const counts: number[] = []
  const valuesOf = (signs: readonly { readonly name: string }[]): Signs => signs.map(({ name }) => {
    const number = numbers.get(name) ?? numbers.set(name, numbers.size).size - 1
    counts[number] = (counts[number] ?? 0) + 1
    return [number, signShare(signs.length)] as const
  })
  const letter = (text: string, problems: readonly string[], isPhrase = false): Letter => {
    const { signs, pairs } = letterSignsIn(index, text)
    return { text, jobs: problems[0]?.startsWith(JOB) === true ? problems.filter((problem) => problem.startsWith(JOB)) : [], asks: valuesOf([...signs, ...pairs]), kinds: valuesOf(signs), isPhrase }
  }
  const all = [
    ...(await readLetters(...lettersElsewhere())).flatMap(({ text, problems, redFlags }) => (problems === undefined || redFlags.length > 0 ? [] : [letter(text, problems)])),
    ...(await readQuestions()).filter(({ text }) => !isHeldBack(text)).map(({ text, problems }) => letter(text, problems)),
    ...phrasesOfJobs(index).map(({ text, jobs }) => letter(text, jobs, true)),
    ...guide.problems.flatMap(({ id, name, what }) => [letter(name, [id]), letter(what, [id])]),
    ...guide.casebook.flatMap(({ words, ends }) => (ends.kind === 'red flag' ? [] : [letter(words, ends.kind === 'problem' ? [guide.problems[ends.problem]?.id ?? ''] : [])])),
  ]
  const kept = (signs: Signs): Signs => signs.filter(([sign]) => (counts[sign] ?? 0) >= LEAST_LETTERS)
  const letters = all.map((one) => ({ ...one, asks: kept(one.asks), kinds: kept(one.kinds) }))
  const jobs = guide.problems.map(({ id }) => id).filter((id) => id.startsWith(JOB) && letters.some((one) => one.jobs[0] === id))
  if (!process.argv.includes('--write')) crossValidate(letters, numbers.size, jobs)
  const model = fit(letters, numbers.size, jobs)
  const names = [...numbers.keys()]
  process.stdout.write(`${JSON.stringify({ letters: letters.length, asking: letters.filter(({ jobs: some }) => some.length > 0).length, signs: numbers.size, kept: model.asks.weights.filter((value) => Math.abs(value) >= LEAST).length })}\n`)
  if (!process.argv.includes('--write')) return
  await writeFile(join(import.meta.dirname, '../../src/match/job-weights.ts'), `import type { JobWeights } from './letter-weights.js'

/** Fitted by \`tests/bench/fit-jobs.ts --write\`, not by hand. The signs are told of in \`letter-signs.ts\`. */
export const JOB_WEIGHTS: JobWeights = {
  asks: ${mapLines(model.asks, names, LEAST, '  ')},
  kinds: new Map([
${[...model.kinds].map(([job, one]) => `    ['${job}', ${mapLines(one, names, LEAST, '    ')}],`).join('\n')}
  ]),
}
`)
}

/** Every phrase by which a job's tree is entered, with the jobs that it may lead to. */
function phrasesOfJobs({ entries: { phrases: { nodes, phrases } }, jobs: { hosts } }: MatchIndex): readonly { readonly text: string; readonly jobs: readonly string[] }[] {
  return phrases.flatMap(({ node, text }) => {
    const entry = nodes[node]
    const jobs = entry !== undefined && hosts.has(entry.host) ? entry.problems.filter((id) => id.startsWith(JOB)) : []
    return jobs.length === 0 ? [] : [{ text, jobs }]
  })
}

function fit(letters: readonly Letter[], width: number, jobs: readonly string[]): Model {
  const asking = letters.filter((one) => one.jobs.length > 0 && !one.isPhrase)
  return {
    asks: fitSparse(letters.map((one): SparseExample => ({ signs: one.asks, isRight: one.jobs.length > 0, weight: 1 })), width, ASKS),
    // A second job that answers too teaches nothing of either.
    kinds: new Map(jobs.map((job) => [
      job, fitSparse(asking.filter((one) => one.jobs[0] === job || !one.jobs.includes(job)).map((one): SparseExample => ({ signs: one.kinds, isRight: one.jobs[0] === job, weight: 1 })), width, KIND),
    ])),
  }
}

function crossValidate(letters: readonly Letter[], width: number, jobs: readonly string[]): void {
  const heard = letters.map((one, at) => ({ one, fold: at % FOLDS, share: 0, best: [] as readonly string[] }))
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const model = fit(letters.filter((_, at) => at % FOLDS !== fold), width, jobs)
    for (const one of heard.filter((each) => each.fold === fold)) {
      one.share = shareOf(oddsOf(model.asks, one.one.asks))
      one.best = [...model.kinds].map(([job, weights]) => ({ job, odds: oddsOf(weights, one.one.kinds) })).sort((a, b) => b.odds - a.odds).slice(0, 3).map(({ job }) => job)
    }
  }
  const asking = heard.filter(({ one }) => one.jobs.length > 0)
  const others = heard.filter(({ one }) => one.jobs.length === 0)
  for (const least of [0.25, 0.5, 0.7]) {
    process.stdout.write(`from ${least} on: jobs ${asking.filter(({ share }) => share >= least).length} of ${asking.length}, trouble ${others.filter(({ share }) => share >= least).length} of ${others.length}\n`)
  }
  process.stdout.write(`job right ${asking.filter(({ one, best }) => one.jobs.includes(best[0] ?? '')).length}, among three ${asking.filter(({ one, best }) => best.some((job) => one.jobs.includes(job))).length}\n`)
}

const JOB = 'job-'
const FOLDS = 5
/** Signs of fewer letters are left out. */
const LEAST_LETTERS = 3
const ASKS = { ridge: 1, lasso: 0.2 }
const KIND = { ridge: 0.3, lasso: 0.3 }
/** Weights smaller than this are left out of the file. */
const LEAST = 0.03

await fitJobs()
