import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { buildMatchIndex, letterSignsIn, type MatchIndex, ruleSign, shareOf, signShare } from '../../src/match/index.js'
import { ERRANDS, LIKE_ERRANDS } from '../match/errands.js'
import { lettersElsewhere, readLetters } from '../match/letters/read-letters.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { FIRST_CALM, FIRST_WORRIED, SECOND_CALM, SECOND_WORRIED, THIRD_CALM, THIRD_WORRIED } from '../match/plain-worries.js'
import { PLANT_TALK } from '../match/plant-talk.js'
import { HEARD, QUIET } from '../match/red-flag-sentences.js'
import { ALARMED_ONCE, MISSED_ONCE, SAME_NOUNS, UNUSUAL } from '../match/spoken-dangers.js'
import { CALM, WORRIED as MOST_WORRIED } from '../match/worried-and-calm.js'
import { BESIDE_MENDED, CALM_BESIDE_MENDED, CALM_IN_PASSING, WORRIED } from '../match/worried-voices.js'
import { fitSparse, oddsOf, type SparseExample, type SparseFit } from './fit-sparse.js'
import { mapLines } from './weights-file.js'

/** A letter with the red flags that it must raise and may raise. */
interface Letter {
  readonly text: string
  readonly must: readonly string[]
  readonly may: readonly string[]
  readonly weight: number
  /** Red flags that a rule hears in it. */
  readonly ruled: readonly string[]
  /** Signs and their values, by number. */
  readonly signs: readonly (readonly [number, number])[]
}

interface LevelModel {
  readonly any: SparseFit
  readonly kinds: ReadonlyMap<string, SparseFit>
}

type Level = 'emergency' | 'caution'

/**
 * Fits the weights of src/match/danger-weights.ts on the letters of tests/match/letters, the tuning two thirds of the
 * development questions, the calm and the worried sentences of the tests and the casebook, and on further files of letters named in ALSO
 * (comma between them; letters that may not be published can be fitted to and kept elsewhere). Prints what letters kept out
 * of five fits were heard as, somewhat kindly, since some letters are written after the same one; with --wrong the wrong
 * ones; with --write the file is written.
 */
async function fitDangers(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const numbers = new Map<string, number>()
  const numberOf = (name: string): number => {
    if (!numbers.has(name)) numbers.set(name, numbers.size)
    return numbers.get(name) ?? 0
  }
  const letter = (text: string, must: readonly string[], may: readonly string[], weight = 1): Letter => {
    const { signs, ruled, rules } = letterSignsIn(index, text)
    const each = signShare(signs.length)
    return { text, must, may, weight, ruled, signs: [...signs.map(({ name }) => [numberOf(name), each] as const), ...[...ruled, ...rules].map((rule) => [numberOf(ruleSign(rule)), 1] as const)] }
  }
  const all = [
    ...(await readLetters(...lettersElsewhere())).map(({ text, redFlags, redFlagsAllowed }) => letter(text, redFlags, redFlagsAllowed)),
    ...(await readQuestions()).filter(({ text }) => !isHeldBack(text)).map(({ text, redFlags, redFlagsAllowed }) => letter(text, redFlags, redFlagsAllowed ?? [])),
    ...(await secondCalm()).map((words) => letter(words, [], [], QUIET_WEIGHT)),
    ...QUIET_WORDS.map((words) => letter(words, [], [], QUIET_WEIGHT)),
    ...SPOKEN.map(([words, [likeliest, ...others]]) => letter(words, likeliest === undefined ? [] : [likeliest], others, SPOKEN_WEIGHT)),
    ...Object.entries(HEARD).flatMap(([redFlag, sentences]) => sentences.map((words) => letter(words, [redFlag], [], SPOKEN_WEIGHT))),
    ...MOST_WORRIED.map((words) => letter(words, emergenciesRuled(index, words), [], SPOKEN_WEIGHT)),
    ...guide.casebook.map(({ words, ends }) => letter(words, ends.kind === 'red flag' ? [guide.redFlags[ends.redFlag]?.id ?? ''] : [], [], ends.kind === 'red flag' ? 1 : QUIET_WEIGHT)),
  ]
  const counts = new Int32Array(numbers.size)
  for (const { signs } of all) for (const [sign] of signs) counts[sign] = (counts[sign] ?? 0) + 1
  const letters = all.map((one) => ({ ...one, signs: one.signs.filter(([sign]) => (counts[sign] ?? 0) >= LEAST_LETTERS) }))
  const names = [...numbers.keys()]
  const levels = (['emergency', 'caution'] as const).map((level) => {
    const kinds = guide.redFlags.filter((redFlag) => redFlag.level === level).map(({ id }) => id as string)
    const lettersOf = lettersOfLevel(letters, level, kinds)
    const common = kinds.filter((id) => lettersOf.filter(({ must }) => must.includes(id)).length >= LEAST_LETTERS_OF_KIND)
    if (!process.argv.includes('--write')) crossValidate(level, lettersOf, numbers.size, common)
    const model = fit(lettersOf, numbers.size, common)
    process.stdout.write(`${level}: ${lettersOf.length} letters, ${lettersOf.filter(({ must }) => must.length > 0).length} of danger, ${model.any.weights.filter((value) => Math.abs(value) >= LEAST).length} of ${numbers.size} signs kept\n`)
    return { level, model }
  })
  if (!process.argv.includes('--write')) return
  const isLearntRule = (sign: number): boolean => (counts[sign] ?? 0) >= LEAST_LETTERS && /^rule .+: /u.test(names[sign] ?? '')
  await writeFile(join(import.meta.dirname, '../../src/match/danger-weights.ts'), `import type { DangerWeights } from './letter-weights.js'

/** Fitted by \`tests/bench/fit-dangers.ts --write\`, not by hand. The signs are told of in \`letter-signs.ts\`. */
export const DANGER_WEIGHTS: DangerWeights = {
${levels.map(({ level, model }) => `  ${level}: {
    any: ${mapLines(model.any, names, LEAST, '    ', isLearntRule)},
    kinds: new Map([
${[...model.kinds].map(([redFlag, one]) => `      ['${redFlag}', ${mapLines(one, names, LEAST, '      ')}],`).join('\n')}
    ]),
  },`).join('\n')}
}
`)
}

/**
 * The letters as one level sees them. What is only asked about is calm beside emergencies; a letter of an emergency teaches
 * nothing of cautions, which may stand beside it.
 */
function lettersOfLevel(letters: readonly Letter[], level: Level, kinds: readonly string[]): readonly Letter[] {
  const ofLevel = (flags: readonly string[]): readonly string[] => flags.filter((flag) => kinds.includes(flag))
  return letters.flatMap((letter) => {
    const [must, may] = [ofLevel(letter.must), ofLevel(letter.may)]
    return level === 'caution' && letter.must.length > must.length ? [] : [{ ...letter, must, may, ruled: ofLevel(letter.ruled) }]
  })
}

function fit(letters: readonly Letter[], width: number, redFlags: readonly string[]): LevelModel {
  const example = ({ signs, weight }: Letter, isRight: boolean): SparseExample => ({ signs, isRight, weight })
  const dangers = letters.filter(({ must }) => must.length > 0)
  return {
    // What may or may not be one teaches nothing.
    any: fitSparse(letters.filter(({ must, may }) => must.length > 0 || may.length === 0).map((one) => example(one, one.must.length > 0)), width, ANY),
    kinds: new Map(redFlags.map((redFlag) => [
      redFlag, fitSparse(dangers.filter(({ must, may }) => must.includes(redFlag) || !may.includes(redFlag)).map((one) => example(one, one.must.includes(redFlag))), width, KIND),
    ])),
  }
}

/** What letters are heard as by weights that were not fitted to them, at several shares of calm ones that raise a flag. */
function crossValidate(level: Level, letters: readonly Letter[], width: number, redFlags: readonly string[]): void {
  const heard = letters.map((one, at) => ({ one, fold: at % FOLDS, any: 0, kind: '' }))
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const model = fit(letters.filter((_, at) => at % FOLDS !== fold), width, redFlags)
    for (const one of heard.filter((each) => each.fold === fold)) {
      one.any = oddsOf(model.any, one.one.signs)
      one.kind = [...model.kinds].map(([redFlag, weights]) => ({ redFlag, odds: oddsOf(weights, one.one.signs) })).reduce((best, each) => (each.odds > best.odds ? each : best), { redFlag: '', odds: -Infinity }).redFlag
    }
  }
  const dangers = heard.filter(({ one }) => one.must.length > 0)
  const calm = heard.filter(({ one }) => one.must.length === 0 && one.may.length === 0)
  const byOdds = calm.map(({ any }) => any).sort((a, b) => b - a)
  for (const share of [0.005, 0.01, 0.02, 0.04]) {
    const least = byOdds[Math.floor(share * byOdds.length)] ?? 0
    process.stdout.write(`${level}: calm letters raised ${share}: from ${shareOf(least).toFixed(3)} on, dangers ${dangers.filter(({ any }) => any > least).length} of ${dangers.length}\n`)
  }
  // What it would cost to take a rule's card back where the whole letter hardly tells of a danger.
  for (const least of [0.02, 0.05, 0.1, 0.2, 0.3]) {
    const unlikely = heard.filter(({ one, any }) => one.ruled.length > 0 && shareOf(any) < least)
    process.stdout.write(`${level}: a rule hears it, below ${least}: calm ${unlikely.filter(({ one }) => one.must.length === 0 && one.may.length === 0).length} of ${calm.filter(({ one }) => one.ruled.length > 0).length}, dangers ${unlikely.filter(({ one }) => one.must.length > 0).length} of ${dangers.filter(({ one }) => one.ruled.length > 0).length}\n`)
  }
  process.stdout.write(`${level}: kind right ${dangers.filter(({ one, kind }) => one.must.includes(kind)).length}, or allowed ${dangers.filter(({ one, kind }) => one.must.includes(kind) || one.may.includes(kind)).length}\n`)
  if (!process.argv.includes('--wrong')) return
  for (const { one, any, kind } of heard) if (one.must.length > 0 ? any < 0 : one.may.length === 0 && any > 0) process.stdout.write(`${any.toFixed(1)} ${one.must.join(',') || 'calm'} <- ${kind} | ${one.text}\n`)
}

/** The calm sentences by which the rules are kept from slipping back: each holds words of danger. */
const QUIET_WORDS: readonly string[] = [...ERRANDS, ...LIKE_ERRANDS, ...PLANT_TALK, ...QUIET, ...CALM, ...ALARMED_ONCE, ...SAME_NOUNS, ...CALM_IN_PASSING, ...CALM_BESIDE_MENDED, ...FIRST_CALM, ...SECOND_CALM, ...THIRD_CALM]

/** Sentences of danger by which the rules are kept from slipping back, with the red flags of which one at least fits. */
const SPOKEN = [...MISSED_ONCE, ...UNUSUAL, ...WORRIED, ...BESIDE_MENDED, ...FIRST_WORRIED, ...SECOND_WORRIED, ...THIRD_WORRIED]

/** What the rules hear in a sentence that was written while they were tuned, and bears no label. */
function emergenciesRuled(index: MatchIndex, words: string): readonly string[] {
  return letterSignsIn(index, words).ruled.filter((redFlag) => index.redFlagsById.get(redFlag)?.level === 'emergency')
}

/** The questions of the second set in which nothing dangerous happened. */
async function secondCalm(): Promise<readonly string[]> {
  const lines = (await readFile(join(import.meta.dirname, '../match/second-questions/questions.jsonl'), 'utf8')).trim().split('\n')
  return lines.map((line) => SecondQuestion.parse(JSON.parse(line))).filter(({ danger }) => danger === null).map(({ text }) => text)
}

const SecondQuestion = z.looseObject({ text: z.string().min(1), danger: z.string().nullable() })

/** They are hard: each was raised for nothing once. */
const QUIET_WEIGHT = 15
/** A card that is missed there is worse than one too many, but there are many of them, and most are plain. */
const SPOKEN_WEIGHT = 5

const FOLDS = 5
/** Signs of fewer letters are left out. */
const LEAST_LETTERS = 2
const LEAST_LETTERS_OF_KIND = 8
const ANY = { ridge: 4, lasso: 0.1 }
const KIND = { ridge: 0.5, lasso: 0.5 }
/** Weights smaller than this are left out of the file. */
const LEAST = 0.03

await fitDangers()
