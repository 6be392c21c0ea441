import type { CaseStep, SecondLookNote, TurnLine, WatchLine } from '../../../shared/index.js'
import { type ChecksToCome, type Reading, reckonedReason, type SecondLook } from '../../engine/index.js'
import type { Check, Guide } from '../../guide/index.js'
import type { Plausible } from '../../season/index.js'
import { checkNamed, hostNamed, problemNamed } from '../guide-names.js'
import { adviceCard, checkCard, officeCall } from './cards.js'
import { wordingOf } from '../wording/index.js'
import { likelyLine, likelyLines, movedOf } from './likely-lines.js'

/** Problems shown beside the leading one: those with at least this share, and no more than so many. */
const WORTH_SHOWING = 0.01
const MOST_OTHERS = 3

/**
 * The next step of a case as the screens show it.
 * @param left how many checks are still to come
 * @param plausible what the season moved when the case was opened
 */
export function stepView(guide: Guide, reading: Reading, left: ChecksToCome | null, plausible: readonly Plausible[] = []): CaseStep {
  const { step, differential } = reading
  switch (step.kind) {
    case 'red-flag':
    case 'place':
      return { kind: step.kind }
    case 'ask':
      return {
        kind: 'ask', check: checkCard(known(checkNamed(guide, step.check), step.check)), left,
        again: step.by === 'second look' ? secondLookNote(guide, step.again) : null,
        isLastLook: step.by === 'last look',
      }
    case 'conclude': {
      const problem = known(problemNamed(guide, step.problem), step.problem)
      const likely = known(differential.find((one) => one.problem === step.problem) ?? null, step.problem)
      const host = reading.host === null ? null : hostNamed(guide, reading.host)
      const others = differential.filter((one) => one !== likely)
      return {
        kind: 'conclude', card: adviceCard(guide, host, problem, likely.probability),
        others: worthShowing(guide, others, plausible), why: likelyLine(guide, likely, plausible),
        turns: turnLines(guide, reading), watched: watchLines(guide, reading, plausible),
      }
    }
    case 'hand-over':
      return {
        kind: 'hand-over', because: becauseInWords(guide, step.because), likely: worthShowing(guide, differential, plausible),
        unsettled: step.unsettled.flatMap((name): Check[] => {
          const check = checkNamed(guide, name)
          return check === null ? [] : [check]
        }).map(checkCard),
        sample: step.sample === null ? null : checkCard(known(checkNamed(guide, step.sample), step.sample)),
        watched: watchLines(guide, reading, plausible),
      }
  }
}

/** The tree's own words, or ours for what the engine found. */
function becauseInWords(guide: Guide, because: string): string {
  const reason = reckonedReason(because)
  return reason === null ? because : wordingOf(guide).because[reason]
}

function secondLookNote(guide: Guide, { said, problem, usual }: SecondLook): SecondLookNote {
  return { said, problemName: known(problemNamed(guide, problem), problem).name, usual }
}

function turnLines(guide: Guide, { turns }: Reading): TurnLine[] {
  return turns.map(({ check, answer, to }) => ({
    check: checkCard(known(checkNamed(guide, check), check)), answer,
    toName: to === null ? wordingOf(guide).notListed.name : known(problemNamed(guide, to), to).name,
  }))
}

function watchLines(guide: Guide, { watched, differential }: Reading, plausible: readonly Plausible[]): WatchLine[] {
  return watched.map((id) => {
    const { name, watch } = known(problemNamed(guide, id), id)
    const probability = differential.find(({ problem }) => problem === id)?.probability ?? 0
    return { problem: id, name, probability, escalate: watch?.escalate ?? '', call: officeCall(guide), ...movedOf(guide, id, plausible) }
  })
}

function worthShowing(guide: Guide, differential: Reading['differential'], plausible: readonly Plausible[]) {
  return likelyLines(guide, differential.filter(({ probability }) => probability >= WORTH_SHOWING).slice(0, MOST_OTHERS), plausible)
}

function known<T>(value: T | null, name: string): T {
  if (value === null) throw new Error(`The reading names "${name}", which its own guide does not have.`)
  return value
}
