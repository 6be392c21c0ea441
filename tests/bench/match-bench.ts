import type { Guide } from '../../src/guide/index.js'
import { isHeldBack, type Question, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { readSample } from '../match/stated-sample/read-sample.js'
import { largerGuide } from './larger-guide.js'
import { MATCHERS, type Matcher } from './match-baselines.js'
import { type Answered, type Figures, isRightEntry, measure } from './match-measure.js'
import { measureStated, type Share } from './stated-measure.js'

interface Speed {
  /** Questions answered in the time allowed. */
  readonly asked: number
  readonly medianMs: number
  readonly p99Ms: number
}

/** The hearing of questions, ours beside three general searches, on the same questions in one run. tests/bench/README.md has the definitions. */
export async function matchBench(json: boolean): Promise<void> {
  const guide = await wholeGuide()
  const questions = await readQuestions()
  const thirds = { tuning: questions.filter(({ text }) => !isHeldBack(text)), heldBack: questions.filter(({ text }) => isHeldBack(text)) }
  const quality = Object.entries(MATCHERS).map(([name, make]) => {
    say(`quality of ${name}`)
    const { answers, speed } = answerAll(make(guide), mixed(questions), runsOf(name), name === 'ours' ? null : QUALITY_MS)
    const figuresOf = (third: readonly Question[]): Figures => measure(guide, third.flatMap((question) => {
      const heard = answers.get(question)
      return heard === undefined ? [] : [{ question, heard }]
    }))
    return { matcher: name, tuning: figuresOf(thirds.tuning), heldBack: figuresOf(thirds.heldBack), ...speed }
  })
  const growth = [1, 10, 100].flatMap((times) => growthAt(guide, questions, times))
  const reliability = reliabilityOf(guide, thirds.heldBack)
  const ours = MATCHERS['ours']?.(guide)
  const stated = ours === undefined ? [] : await Promise.all((['first', 'second'] as const).map(async (sample) => ({ sample, ...measureStated(await readSample(sample), ours.answer) })))
  if (json) {
    process.stdout.write(`${JSON.stringify({ quality, growth, reliability, stated }, null, 2)}\n`)
    return
  }
  for (const { matcher, tuning, heldBack, medianMs, p99Ms } of quality) {
    process.stdout.write(`${matcher}: median ${medianMs.toFixed(2)} ms, p99 ${p99Ms.toFixed(2)} ms\n`)
    for (const [name, figures] of [['tuning', tuning], ['held back', heldBack]] as const) process.stdout.write(`  ${name.padEnd(9)} ${lineOf(figures)}\n`)
  }
  for (const { matcher, times, buildMs, asked, medianMs, p99Ms } of growth) {
    process.stdout.write(`${matcher} at ${times}x: built in ${Math.round(buildMs)} ms, ${asked} questions, median ${medianMs.toFixed(2)} ms, p99 ${p99Ms.toFixed(2)} ms\n`)
  }
  for (const { from, to, questions: count, stated, right } of reliability) {
    process.stdout.write(`confidence ${from} to ${to}: ${count} questions, stated ${stated.toFixed(2)}, right ${right.toFixed(2)}\n`)
  }
  for (const { sample, questions: count, precision, contradicted, recall } of stated) {
    process.stdout.write(`answers said, ${sample} fully labelled sample of ${count}: right ${spread(precision)}, contradicted ${spread(contradicted)}, heard ${spread(recall)}\n`)
  }
}

/**
 * Answers, and median and p99 over the questions, each timed by its quickest of some runs: other work shares the machine.
 * A matcher that is slow answers as many questions as fit in `atMostMs`, in the given order, and one at least.
 */
function answerAll(matcher: Matcher, questions: readonly Question[], runs: number, atMostMs: number | null): { answers: ReadonlyMap<Question, Answered>; speed: Speed } {
  const answers = new Map<Question, Answered>()
  const quickest = new Map<Question, number>()
  const until = performance.now() + (atMostMs ?? Number.POSITIVE_INFINITY)
  for (let run = 0; run < runs; run += 1) {
    for (const question of questions) {
      const from = performance.now()
      if (from > until && answers.size > 0) break
      answers.set(question, matcher.answer(question.text))
      quickest.set(question, Math.min(quickest.get(question) ?? Number.POSITIVE_INFINITY, performance.now() - from))
    }
  }
  const sorted = [...quickest.values()].sort((a, b) => a - b)
  return { answers, speed: { asked: sorted.length, medianMs: sorted[Math.floor(sorted.length / 2)] ?? 0, p99Ms: sorted[Math.floor(sorted.length * 0.99)] ?? 0 } }
}

function growthAt(guide: Guide, questions: readonly Question[], times: number): ({ matcher: string; times: number; buildMs: number } & Speed)[] {
  const larger = largerGuide(guide, times)
  return Object.entries(MATCHERS).filter(([name]) => times <= MOST_TIMES_FOR_FUSE || !name.startsWith('fuse.js')).map(([name, make]) => {
    say(`growth of ${name} at ${times}x`)
    const from = performance.now()
    const matcher = make(larger)
    const buildMs = performance.now() - from
    return { matcher: name, times, buildMs, ...answerAll(matcher, mixed(questions), name === 'ours' ? 2 : 1, GROWTH_MS).speed }
  })
}

/** The questions in a fixed order that mixes the files, so that the first few are like the rest. */
function mixed(questions: readonly Question[]): readonly Question[] {
  return questions.map((_, number) => questions[(number * STRIDE) % questions.length]).filter((question) => question !== undefined)
}

function spread({ of, share, from, to }: Share): string {
  const percent = (value: number): string => (100 * value).toFixed(1)
  return `${percent(share)} % of ${of} (${percent(from)} to ${percent(to)})`
}

function say(what: string): void {
  process.stderr.write(`${what} ...\n`)
}

/** How often the first entry was right, by the confidence stated, on questions without a red flag. */
function reliabilityOf(guide: Guide, questions: readonly Question[]) {
  const ours = MATCHERS['ours']?.(guide)
  const answered = questions.flatMap((question) => {
    const heard = ours?.answer(question.text)
    const [first] = heard?.entries ?? []
    return heard === undefined || first === undefined || heard.redFlags.length > 0 ? [] : [{ stated: heard.confidence ?? 0, right: isRightEntry(guide, question, first, false) }]
  })
  return [[0, 0.5], [0.5, 0.8], [0.8, 0.9], [0.9, 1]].flatMap(([from = 0, to = 1]) => {
    const some = answered.filter(({ stated }) => stated >= from && (stated < to || to === 1))
    if (some.length === 0) return []
    return [{ from, to, questions: some.length, stated: some.reduce((sum, { stated }) => sum + stated, 0) / some.length, right: some.filter(({ right }) => right).length / some.length }]
  })
}

function lineOf(figures: Figures): string {
  return Object.entries(figures).map(([name, value]) => `${name} ${value === null ? '-' : name === 'questions' ? String(value) : (100 * Number(value)).toFixed(1)}`).join(', ')
}

/** The general searches take a tenth of a second a question and more; once is enough to see that. */
function runsOf(name: string): number {
  return name === 'ours' ? 5 : 1
}

/** A prime larger than any number of questions here, so that each comes up once. */
const STRIDE = 7_919
/** The general searches take a tenth of a second a question and more, at 100x some ten seconds: they get this long. */
const QUALITY_MS = 6_000
const GROWTH_MS = 2_000
/** At 100x fuse.js takes more than half a minute for one question: it is left out there. */
const MOST_TIMES_FOR_FUSE = 10
