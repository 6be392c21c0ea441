import { logLoss } from '../../src/engine/index.js'
import { type Ending, endingAt, isConcluded, type Play, standAt } from './soybean-play.js'

/** The plays of the training cases under one misread rate: as recorded, and with one answer in twenty wrong. */
export interface Plays {
  readonly clean: readonly Play[]
  readonly flipped: readonly Play[]
}

/** Bars up to this one are tried. */
export const HIGHEST_BAR = 0.94

/** What was asked of the engine beforehand, for cases as recorded; only ever held against plays of training cases. */
const aims = { right: 0.975, resolved: 0.91, checks: 5.2 } as const
/** A point right too few weighs as much as two points resolved too few, or 0.4 of a check too many. Our judgement. */
const WEIGHT_OF_RIGHT = 2
const WEIGHT_OF_CHECK = 0.05
/** Shortfalls that differ by less than this are alike. */
const STEP = 0.0005

/**
 * Chooses the misread rate and the ending: of those that fall short of the aims the least, the one whose first choice is
 * right most often when one answer in twenty is wrong; then the one with the lower log loss.
 */
export function chooseEnding(tried: readonly { readonly misread: number; readonly plays: Plays }[]): { misread: number; ending: Ending } {
  let best: { misread: number; ending: Ending; marks: Marks; loss: number | undefined } | undefined
  for (const { misread, plays } of tried) {
    for (const ending of endings()) {
      const marks = marksOf(plays, ending)
      const order = best === undefined ? -1 : marks.shortfall - best.marks.shortfall || marks.wrong - best.marks.wrong
      if (order > 0) continue
      if (best === undefined || order < 0) {
        best = { misread, ending, marks, loss: undefined }
        continue
      }
      const bestPlays = tried.find((one) => one.misread === best?.misread)?.plays ?? plays
      const [loss, bestLoss] = [lossOf(plays, ending), best.loss ?? lossOf(bestPlays, best.ending)]
      best = loss < bestLoss ? { misread, ending, marks, loss } : { ...best, loss: bestLoss }
    }
  }
  if (best === undefined) throw new Error('There is at least one misread rate to choose from.')
  return { misread: best.misread, ending: best.ending }
}

function* endings(): Generator<Ending> {
  for (let early = 86; early <= 100 * HIGHEST_BAR; early += 1) {
    for (let last = 56; last <= 80; last += 4) {
      for (const leastWorth of [0, 0.03, 0.045, 0.06, 0.08]) yield { early: early / 100, last: last / 100, leastWorth }
    }
  }
}

interface Marks {
  /** How far the cases as recorded fall short of the aims, in steps. */
  readonly shortfall: number
  /** Wrong first choices among the spoilt cases. */
  readonly wrong: number
}

function marksOf({ clean, flipped }: Plays, ending: Ending): Marks {
  let [resolved, right, checks, wrong] = [0, 0, 0, 0]
  for (const play of clean) {
    const at = endingAt(play, ending)
    const stand = standAt(play, at)
    checks += at
    if (!isConcluded(stand, ending)) continue
    resolved += 1
    if (stand.leading === play.truth) right += 1
  }
  for (const play of flipped) if (standAt(play, endingAt(play, ending)).leading !== play.truth) wrong += 1
  const shortfall = WEIGHT_OF_RIGHT * Math.max(0, aims.right - right / Math.max(1, resolved))
    + Math.max(0, aims.resolved - resolved / clean.length) + WEIGHT_OF_CHECK * Math.max(0, checks / clean.length - aims.checks)
  return { shortfall: Math.round(shortfall / STEP), wrong }
}

function lossOf({ clean, flipped }: Plays, ending: Ending): number {
  let loss = 0
  for (const play of [...clean, ...flipped]) loss += logLoss(standAt(play, endingAt(play, ending)).shares, play.truth)
  return loss
}
