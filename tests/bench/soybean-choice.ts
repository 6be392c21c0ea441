import { type Ending, endingAt, isConcluded, type Play, standAt } from './soybean-play.js'

/** The plays of the training cases: as recorded, and with one answer in twenty wrong. */
export interface Plays {
  readonly clean: readonly Play[]
  readonly flipped: readonly Play[]
}

/** The next check confirms a conclusion when it tells this many bits between the first two; settled on splits 26 to 33, see the README. */
const CONFIRMING = 0.2

/**
 * What was asked of the engine beforehand, each with what counts as one mark above or below it: right among the resolved, first
 * choice right with one answer in twenty wrong, resolved (shares of cases), and checks a case. Half a point of cases weighs as
 * much as a tenth of a check. Our judgement.
 */
const aims = {
  right: { least: 0.975, mark: 0.005 }, first: { least: 0.88, mark: 0.005 }, resolved: { least: 0.91, mark: 0.005 }, checks: { most: 5.2, mark: 0.1 },
} as const

/**
 * Chooses the ending whose least mark over the aims is greatest: what goes beyond one aim is of no use while another is missed.
 */
export function chooseEnding(plays: Plays): Ending {
  let best: { ending: Ending; marks: number } | undefined
  for (const ending of endings()) {
    const marks = marksOf(plays, ending)
    if (best === undefined || marks > best.marks) best = { ending, marks }
  }
  if (best === undefined) throw new Error('There is at least one ending to choose from.')
  return best.ending
}

function* endings(): Generator<Ending> {
  for (let early = 86; early <= 94; early += 1) {
    for (let last = 56; last <= 80; last += 4) {
      for (const leastWorth of [0, 0.03, 0.045, 0.06, 0.08]) yield { early: early / 100, confirming: CONFIRMING, last: last / 100, leastWorth }
    }
  }
}

function marksOf({ clean, flipped }: Plays, ending: Ending): number {
  let [resolved, right, checks, first] = [0, 0, 0, 0]
  for (const play of clean) {
    const at = endingAt(play, ending)
    const stand = standAt(play, at)
    checks += at
    if (!isConcluded(stand, ending)) continue
    resolved += 1
    if (stand.leading === play.truth) right += 1
  }
  for (const play of flipped) if (standAt(play, endingAt(play, ending)).leading === play.truth) first += 1
  return Math.min(
    (right / Math.max(1, resolved) - aims.right.least) / aims.right.mark, (first / flipped.length - aims.first.least) / aims.first.mark,
    (resolved / clean.length - aims.resolved.least) / aims.resolved.mark, (aims.checks.most - checks / clean.length) / aims.checks.mark,
  )
}
