/**
 * The engine on cases that nobody here made (soybean, see tests/external/soybean/cases.ts), ten folds. The
 * misread rate and the bars of a fold are chosen inside its nine training parts by an inner split; the candidates and the
 * rule of choice were settled with results of split 1980 in view (DEVELOPERS.md), so judge by another split: SOYBEAN_SPLIT=77.
 */
import { Belief, brierScore, calibrationError, type DescribedCases, type Learnt, learnModel, logLoss, mean, reliabilityBins } from '../../src/engine/index.js'
import { linearDraws, readSoybeans, type SoybeanCases, spoil, splitInTen } from '../external/soybean/cases.js'
import { cartTree } from './cart-tree.js'
import { type Bars, chooseBars, endOf, FOCUS, HIGHEST_BAR, leaderOf, type Outcome, type Play, playSoybean } from './soybean-play.js'

const INNER_PARTS = 5
/** Rates tried for misread answers: the written guide's, and the one answer in twenty that the spoiled runs are about. */
const MISREADS = [0.03, 0.05]
/** Share right among resolved that the bars are chosen for, inside the training parts. */
const AIM = 0.975
const NOT_LISTED = 0.01

interface Figures {
  readonly engine: string
  readonly answers: string
  readonly top1: number
  readonly top3: number
  readonly resolved: number | null
  readonly right: number | null
  readonly meanChecks: number
  readonly p90Checks: number
  readonly wrongAndSure: number
  readonly logLoss: number
  readonly brier: number
  readonly calibrationGap: number
}

interface Fold {
  readonly learnt: Learnt
  readonly belief: Belief
  readonly bars: Bars
  readonly misread: number
  readonly plainBelief: Belief
  readonly tested: readonly number[]
  readonly cart: ReturnType<typeof cartTree>
}

export async function soybeanBench(json: boolean): Promise<void> {
  const seed = Number(process.env.SOYBEAN_SPLIT ?? 1980)
  const data = readSoybeans()
  const parts = splitInTen(data, seed)
  const folds = Array.from({ length: 10 }, (_, part) => {
    const fold = makeFold(data, parts, part)
    process.stderr.write(`fold ${part + 1} of 10: misread ${fold.misread}, bars ${fold.bars.early} and ${fold.bars.last}\n`)
    return fold
  })
  const spoils: readonly (readonly [string, number, number])[] = [
    ['as recorded', 0, 0], ['20 % not sure', 0.2, 0], ['30 % not sure', 0.3, 0], ['5 % wrong', 0, 0.05], ['10 % wrong', 0, 0.1], ['20 % not sure, 5 % wrong', 0.2, 0.05],
  ]
  const rows: Figures[] = []
  const bins: Record<string, ReturnType<typeof reliabilityBins>> = {}
  for (const [name, unsure, wrong] of spoils) {
    const seeds = unsure + wrong === 0 ? [0] : [101, 102, 103, 104, 105]
    const outcomes: Record<string, Outcome[]> = {}
    const add = (engine: string, outcome: Outcome): void => { (outcomes[engine] ??= []).push(outcome) }
    for (const spoilSeed of seeds) {
      const cells = unsure + wrong === 0 ? data.cells : spoil(data, spoilSeed, unsure, wrong)
      for (const fold of folds) for (const row of fold.tested) playAll(fold, cells[row] ?? new Int8Array(), data.problems[row] ?? 0, row, add)
    }
    for (const [engine, ends] of Object.entries(outcomes)) rows.push(figures(engine, name, ends))
    const ours = outcomes['Frondline engine'] ?? []
    bins[name] = reliabilityBins(ours.map(({ claimed, leading, truth }) => ({ claimed, isRight: leading === truth })))
    if (name === 'as recorded') {
      const complete = ours.filter((_, place) => isComplete(data, folds, place))
      rows.push(figures('Frondline engine', 'the 562 rows without ?', complete))
    }
    process.stderr.write(`${name}: done\n`)
  }
  if (json) process.stdout.write(`${JSON.stringify({ split: seed, folds: folds.map(({ bars, misread }) => ({ ...bars, misread })), rows, bins }, null, 2)}\n`)
  else print(rows, bins)
}

function makeFold(data: SoybeanCases, parts: Int32Array, part: number): Fold {
  const rows = Array.from(parts, (_, row) => row)
  const training = rows.filter((row) => parts[row] !== part)
  const { misread, bars } = choose(data, training, part)
  const learnt = learn(data, training, misread)
  return {
    learnt, misread, bars, belief: new Belief(learnt.model, FOCUS), tested: rows.filter((row) => parts[row] === part),
    plainBelief: new Belief(plainModel(learnt)), cart: cartTree(data, training),
  }
}

/** Chooses the misread rate and then the bars by playing the training cases against models learnt without them. */
function choose(data: SoybeanCases, training: readonly number[], part: number): { misread: number; bars: Bars } {
  const draw = linearDraws(10_000 + part)
  const inner = new Map(training.map((row) => [row, Math.floor(draw() * INNER_PARTS)]))
  // People misread about one answer in twenty: the rate has to serve clean answers and such ones.
  const flipped = spoil(data, 20_000 + part, 0, 0.05)
  let best: { misread: number; loss: number; plays: Play[] } | null = null
  for (const misread of MISREADS) {
    const clean: Play[] = []
    let loss = 0
    for (let held = 0; held < INNER_PARTS; held++) {
      const learnt = learn(data, training.filter((row) => inner.get(row) !== held), misread)
      const belief = new Belief(learnt.model, FOCUS)
      for (const row of training.filter((one) => inner.get(one) === held)) {
        const truth = data.problems[row] ?? 0
        clean.push(playSoybean(learnt, belief, data.cells[row] ?? new Int8Array(), truth, HIGHEST_BAR))
        const spoilt = playSoybean(learnt, belief, flipped[row] ?? new Int8Array(), truth, HIGHEST_BAR)
        loss += logLoss(spoilt.steps.at(-1)?.shares ?? [], truth)
      }
    }
    for (const play of clean) loss += logLoss(play.steps.at(-1)?.shares ?? [], play.truth)
    if (best === null || loss < best.loss) best = { misread, loss, plays: clean }
  }
  return { misread: best?.misread ?? 0.05, bars: chooseBars(best?.plays ?? [], AIM) }
}

function learn(data: SoybeanCases, rows: readonly number[], misread: number): Learnt {
  const described: DescribedCases = {
    answers: data.answerWords.map((words) => words.length), problems: data.problemNames.length,
    cases: rows.map((row) => ({ problem: data.problems[row] ?? 0, answers: data.cells[row] ?? new Int8Array() })),
  }
  return learnModel(described, { looseness: 'fit', profileCases: 1, smoothing: 0.5, misread, notListed: NOT_LISTED })
}

/** The profiles alone: naive Bayes. */
function plainModel({ model, profiles }: Learnt): Learnt['model'] {
  const problems = model.problems
  return {
    problems, rows: problems, problemOfRow: Int32Array.from({ length: problems }, (_, row) => row), logRowShare: new Float64Array(problems), groups: 0,
    checks: model.checks.map((check, place) => {
      const log = profiles[place] ?? new Float64Array()
      const share = log.map(Math.exp)
      const orderliness = Float64Array.from({ length: problems }, (_, row) => {
        let sum = 0
        for (let answer = 0; answer < check.answers; answer++) sum += (share[row * check.answers + answer] ?? 0) * (log[row * check.answers + answer] ?? 0)
        return sum
      })
      return { ...check, log, share, orderliness }
    }),
  }
}

function playAll(fold: Fold, cells: Int8Array, truth: number, _row: number, add: (engine: string, outcome: Outcome) => void): void {
  add('Frondline engine', endOf(playSoybean(fold.learnt, fold.belief, cells, truth, HIGHEST_BAR), fold.bars))
  const { plainBelief } = fold
  plainBelief.start(fold.learnt.logPriors)
  cells.forEach((answer, check) => { if (answer >= 0) plainBelief.see(check, answer) })
  add('naive Bayes, all 35 answers', whole(Float64Array.from(plainBelief.shares()), truth, 35))
  const simple = { ...fold.learnt, model: plainBelief.model }
  add('naive Bayes, one check at a time, stop 0.95', endOf(playSoybean(simple, plainBelief, cells, truth, 0.95), { early: 0.95, last: 0.95 }))
  for (const atUnsure of ['both', 'stop'] as const) {
    const { shares, checks } = fold.cart(cells, atUnsure)
    add(`CART tree, ${atUnsure === 'both' ? 'all branches at not sure' : 'stops at not sure'}`, whole(shares, truth, checks))
  }
}

function whole(shares: Float64Array, truth: number, checks: number): Outcome {
  const leading = leaderOf(shares)
  return { truth, shares, leading, claimed: shares[leading] ?? 0, checks, isResolved: true }
}

function isComplete(data: SoybeanCases, folds: readonly Fold[], place: number): boolean {
  const row = folds.flatMap(({ tested }) => tested)[place]
  return row !== undefined && !(data.cells[row]?.includes(-1) ?? true)
}

function figures(engine: string, answers: string, ends: readonly Outcome[]): Figures {
  const resolved = ends.filter(({ isResolved }) => isResolved)
  const asks = engine === 'Frondline engine' || engine.includes('one check at a time')
  const checks = ends.map((end) => end.checks).sort((a, b) => a - b)
  const isRight = ({ leading, truth }: Outcome): number => (leading === truth ? 1 : 0)
  const isAmongThree = ({ shares, truth }: Outcome): number =>
    Array.from(shares).filter((share) => share > (shares[truth] ?? 0)).length < 3 ? 1 : 0
  const bins = reliabilityBins(ends.map((end) => ({ claimed: end.claimed, isRight: end.leading === end.truth })))
  return {
    engine, answers, top1: mean(ends.map(isRight)), top3: mean(ends.map(isAmongThree)),
    resolved: asks ? resolved.length / ends.length : null, right: asks ? mean(resolved.map(isRight)) : null,
    meanChecks: mean(checks), p90Checks: checks[Math.floor(checks.length * 0.9)] ?? 0,
    wrongAndSure: mean(ends.map((end) => (end.claimed >= 0.95 && end.leading !== end.truth ? 1 : 0))),
    logLoss: mean(ends.map(({ shares, truth }) => logLoss(shares, truth))), brier: mean(ends.map(({ shares, truth }) => brierScore(shares, truth))),
    calibrationGap: calibrationError(bins),
  }
}

function print(rows: readonly Figures[], bins: Record<string, ReturnType<typeof reliabilityBins>>): void {
  const share = (value: number | null): string => (value === null ? '   –' : (100 * value).toFixed(1).padStart(5))
  process.stdout.write(`${'engine'.padEnd(46)}${'answers'.padEnd(26)} top-1 top-3  res. right  checks p90   w&s  loss  Brier  gap\n`)
  for (const row of rows) {
    process.stdout.write(`${row.engine.padEnd(46)}${row.answers.padEnd(26)} ${share(row.top1)} ${share(row.top3)} ${share(row.resolved)} ${share(row.right)}   ${row.meanChecks.toFixed(2).padStart(5)}  ${String(row.p90Checks).padStart(2)}  ${(100 * row.wrongAndSure).toFixed(2).padStart(5)} ${row.logLoss.toFixed(3)}  ${row.brier.toFixed(3)} ${share(row.calibrationGap)}\n`)
  }
  for (const [name, list] of Object.entries(bins)) {
    process.stdout.write(`${name}: claimed → right ${list.map(({ claimed, right, count }) => `${share(claimed).trim()} → ${share(right).trim()} (${count})`).join(', ')}\n`)
  }
}
