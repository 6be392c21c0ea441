/**
 * The engine on cases that nobody here made (soybean, see tests/external/soybean/README.md), ten folds. The ending
 * of a fold is chosen inside its nine training parts by inner splits (soybean-choice.ts). How the procedure
 * itself came about, and every run of it, stands in that README. SOYBEAN_SPLIT=77 takes another split.
 */
import { brierScore, calibrationError, logLoss, mean, reliabilityBins } from '../../src/engine/index.js'
import { readSoybeans, type SoybeanCases, spoil, splitInTen } from '../external/soybean/cases.js'
import { leaderOf } from './asked-tree.js'
import { type Fold, makeFold } from './soybean-fold.js'
import { endOf, type Outcome, playSoybean, SURE_ENOUGH } from './soybean-play.js'

const OURS = 'Frondline engine'

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

export async function soybeanBench(json: boolean): Promise<void> {
  const seed = Number(process.env.SOYBEAN_SPLIT ?? 1980)
  const data = readSoybeans()
  const parts = splitInTen(data, seed)
  const folds = Array.from({ length: 10 }, (_, part) => {
    const fold = makeFold(data, parts, part)
    process.stderr.write(`fold ${part + 1} of 10: bars ${fold.ending.early} and ${fold.ending.last}, least worth ${fold.ending.leastWorth}\n`)
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
      for (const fold of folds) for (const row of fold.tested) playAll(fold, cells[row] ?? new Int8Array(), data.problems[row] ?? 0, add)
    }
    for (const [engine, ends] of Object.entries(outcomes)) rows.push(figures(engine, name, ends))
    const ours = outcomes[OURS] ?? []
    bins[name] = reliabilityBins(ours.map(({ claimed, leading, truth }) => ({ claimed, isRight: leading === truth })))
    if (name === 'as recorded') {
      const complete = ours.filter((_, place) => isComplete(data, folds, place))
      rows.push(figures(OURS, 'the 562 rows without ?', complete))
    }
    process.stderr.write(`${name}: done\n`)
  }
  if (json) process.stdout.write(`${JSON.stringify({ split: seed, folds: folds.map(({ ending }) => ending), rows, bins }, null, 2)}\n`)
  else print(rows, bins)
}

function playAll(fold: Fold, cells: Int8Array, truth: number, add: (engine: string, outcome: Outcome) => void): void {
  add(OURS, endOf(playSoybean(fold.tree, cells, truth, SURE_ENOUGH), fold.ending))
  const { plain, plainBelief } = fold
  plainBelief.start(plain.logPriors)
  cells.forEach((answer, check) => { if (answer >= 0) plainBelief.see(check, answer) })
  add('naive Bayes, all 35 answers', whole(Float64Array.from(plainBelief.shares()), truth, 35))
  add('naive Bayes, one check at a time, stop 0.95', endOf(playSoybean(fold.plainTree, cells, truth, 0.95), { early: 0.95, confirming: Infinity, last: 0.95, leastWorth: 0 }))
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
  const asks = engine === OURS || engine.includes('one check at a time')
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
