import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { buildMatchIndex, subjectIn } from '../../src/match/index.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { rounded, wrapped } from './weights-file.js'

const A_PLANT = 'a plant'
const SUBJECTS = [A_PLANT, 'garden-conditions', 'insect-found', 'poison-plant', 'unwanted-plant', 'wildlife-damage'] as const
const ThirdQuestion = z.strictObject({ text: z.string().min(1), host: z.string() })

interface Example {
  readonly text: string
  readonly from: string
  readonly subject: number
  /** How many times the example counts. */
  readonly weight: number
  /** Values by subject and weight: most weights belong to one subject, those of its own words are shared. */
  readonly features: readonly (readonly [number, number])[]
  readonly own: readonly { readonly name: number; readonly fit: number }[]
}

interface Model {
  /** One row a subject; a column a feature. */
  readonly rows: readonly Float64Array[]
  byName: number
  byFit: number
}

/**
 * Fits the weights of src/match/subject-weights.ts: softmax regression with a ridge, by gradient descent, on the tuning
 * two thirds of the development questions, the third set and the casebook. Prints five-fold figures and writes the file.
 */
export async function fitSubjects(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const third = (await readFile(join(import.meta.dirname, '../match/third-questions/questions.jsonl'), 'utf8')).trim().split('\n').map((line) => ThirdQuestion.parse(JSON.parse(line)))
  const hostsOfCase = guide.casebook.flatMap(({ words, host, ends }) => {
    const hosts = host !== null ? [guide.hosts[host]?.id ?? ''] : ends.kind === 'problem' ? guide.hosts.filter(({ problems }) => problems.includes(ends.problem)).map(({ id }) => id) : []
    const subjects = [...new Set(hosts.map(subjectOf))]
    return subjects.length === 1 && ends.kind !== 'red flag' ? [{ text: words, host: hosts[0] ?? '', from: 'casebook' }] : []
  })
  const asked = (await readQuestions()).filter(({ text, host, redFlags, outOfScope }) => !isHeldBack(text) && host !== null && redFlags.length === 0 && !outOfScope)
  const columns = new Map<string, number>([['base', 0]])
  const examples: readonly Example[] = [
    ...asked.map(({ text, host }) => ({ text, host: host ?? '', from: 'questions' })), ...third.map((one) => ({ ...one, from: 'third' })), ...hostsOfCase,
  ].map(({ text, host, from }) => {
    const { features, own } = subjectIn(index, text)
    const values = [['base', 1] as const, ...features].map(([name, value]) => {
      if (!columns.has(name)) columns.set(name, columns.size)
      return [columns.get(name) ?? 0, value] as const
    })
    return { text, from, weight: from === 'third' ? THIRD_WEIGHT : 1, subject: SUBJECTS.indexOf(subjectOf(host)), features: values, own: SUBJECTS.map((subject) => own.get(subject) ?? { name: 0, fit: 0 }) }
  })
  if (!process.argv.includes('--write')) crossValidate(examples, columns.size)
  const model = fitted(examples, columns.size)
  process.stdout.write(`${JSON.stringify({ examples: examples.length, features: columns.size, byName: rounded(model.byName), byFit: rounded(model.byFit) })}\n`)
  if (!process.argv.includes('--write')) return
  const lines = SUBJECTS.map((subject, row) => {
    const weights = [...columns].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, column]) => [name, rounded(model.rows[row]?.[column] ?? 0)] as const).filter(([, value]) => Math.abs(value) >= LEAST)
    return `    '${subject}': {\n${wrapped(weights.map(([name, value]) => `'${name}': ${value},`), '      ')}\n    },`
  })
  await writeFile(join(import.meta.dirname, '../../src/match/subject-weights.ts'), `${HEADER.trim()}
export const SUBJECT_WEIGHTS: SubjectWeights = {
  byName: ${rounded(model.byName)},
  byFit: ${rounded(model.byFit)},
  bySubject: {
${lines.join('\n')}
  },
}
`)
}

const HEADER = `
/** How much each feature speaks for each subject. Positive speaks for it; a feature that is missing says nothing. */
export interface SubjectWeights {
  /** For a host's own name and its best complaint, alike for all subjects. */
  readonly byName: number
  readonly byFit: number
  readonly bySubject: Readonly<Record<string, Readonly<Record<string, number>>>>
}

/** Fitted by \`tests/bench/fit-subjects.ts --write\`, not by hand. The features are told of in \`subject-features.ts\`. */
`

const LEAST = 0.03
/** How often the subject is right on questions that the weights were not fitted to, by where they come from. */
function crossValidate(examples: readonly Example[], width: number): void {
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const model = fitted(examples.filter((_, number) => number % FOLDS !== fold), width)
    for (const [number, example] of examples.entries()) if (number % FOLDS === fold) tally(example, model)
  }
  for (const [name, [right, all]] of tallied) process.stdout.write(`${name}: ${right} of ${all}\n`)
  if (process.argv.includes('--wrong')) process.stdout.write(`${wrong.join('\n')}\n`)
}

const tallied = new Map<string, [number, number]>()
const wrong: string[] = []

function tally(example: Example, model: Model): void {
  const shares = sharesOf(example, model)
  const best = shares.indexOf(Math.max(...shares))
  for (const name of [`${example.from} ${SUBJECTS[example.subject] ?? ''}`, 'all']) {
    const so = tallied.get(name) ?? [0, 0]
    tallied.set(name, [so[0] + Number(best === example.subject), so[1] + 1])
  }
  if (best !== example.subject) wrong.push(`${example.from} ${SUBJECTS[example.subject] ?? ''} <- ${SUBJECTS[best] ?? ''} ${(shares[best] ?? 0).toFixed(2)} | ${example.text}`)
}

function subjectOf(host: string): (typeof SUBJECTS)[number] {
  return SUBJECTS.find((subject) => subject === host) ?? A_PLANT
}

function sharesOf({ features, own }: Example, model: Model): number[] {
  const strengths = SUBJECTS.map((_, row) => {
    const words = own[row] ?? { name: 0, fit: 0 }
    return features.reduce((sum, [column, value]) => sum + (model.rows[row]?.[column] ?? 0) * value, model.byName * words.name + model.byFit * words.fit)
  })
  const most = Math.max(...strengths)
  const raised = strengths.map((strength) => Math.exp(strength - most))
  const sum = raised.reduce((total, value) => total + value, 0)
  return raised.map((value) => value / sum)
}

function fitted(examples: readonly Example[], width: number): Model {
  const model: Model = { rows: SUBJECTS.map(() => new Float64Array(width)), byName: 1, byFit: 1 }
  const speed = SUBJECTS.map(() => new Float64Array(width))
  const total = examples.length
  let [speedName, speedFit] = [0, 0]
  for (let turn = 0; turn < TURNS; turn += 1) {
    const slope = SUBJECTS.map(() => new Float64Array(width))
    let [slopeName, slopeFit] = [0, 0]
    for (const example of examples) {
      const shares = sharesOf(example, model)
      for (const [row, share] of shares.entries()) {
        const gap = example.weight * ((row === example.subject ? 1 : 0) - share) / total
        for (const [column, value] of example.features) { const line = slope[row]; if (line !== undefined) line[column] = (line[column] ?? 0) + gap * value }
        slopeName += gap * (example.own[row]?.name ?? 0)
        slopeFit += gap * (example.own[row]?.fit ?? 0)
      }
    }
    for (const [row, weights] of model.rows.entries()) {
      for (let column = 0; column < width; column += 1) {
        const pull = column === 0 ? 0 : (RIDGE / total) * (weights[column] ?? 0)
        const next = MOMENTUM * (speed[row]?.[column] ?? 0) + STEP * ((slope[row]?.[column] ?? 0) - pull)
        const line = speed[row]
        if (line !== undefined) line[column] = next
        weights[column] = (weights[column] ?? 0) + next
      }
    }
    speedName = MOMENTUM * speedName + STEP * slopeName
    speedFit = MOMENTUM * speedFit + STEP * slopeFit
    model.byName += speedName
    model.byFit += speedFit
  }
  return model
}

const FOLDS = 5
const TURNS = 400
const STEP = 0.5
const MOMENTUM = 0.9
const RIDGE = 1
/** The third set is small and all of it is hard: questions that name a plant in passing, or none. */
const THIRD_WEIGHT = 3

await fitSubjects()
