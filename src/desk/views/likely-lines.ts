import type { LikelyLine, ReasonLine } from '../../../shared/index.js'
import type { Differential, Likely, Reason } from '../../engine/index.js'
import { frequencyShares, type FrequencyWord, type Guide } from '../../guide/index.js'
import { LEAST_TOLD, type Plausible } from '../../season/index.js'
import { answerShown, checkNamed, problemNamed } from '../guide-names.js'
import { wordingOf } from '../wording/index.js'
import { movedLine } from './moved-line.js'

/** A finding that moves the odds by less than a tenth either way says nothing worth reading. */
const LEAST_WEIGHT = 0.1

/** Seen less often than this, a sign is no sign of the problem by its frequency; it may still be rarer with the others. */
const OFTEN = 0.4

/** The whole differential, most likely first. */
export function likelyLines(guide: Guide, differential: Differential, plausible: readonly Plausible[] = []): LikelyLine[] {
  return differential.map((likely) => likelyLine(guide, likely, plausible))
}

/**
 * One ranked problem with its reasons, the weightiest first.
 * @param plausible what the season moves; the line says so where it is about one of these
 */
export function likelyLine(guide: Guide, { problem: name, probability, reasons }: Likely, plausible: readonly Plausible[] = []): LikelyLine {
  const { notListed } = wordingOf(guide)
  const problem = name === null ? null : problemNamed(guide, name)
  const byWeight = [...reasons].sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
  return {
    problem: problem?.id ?? null, name: problem?.name ?? notListed.name, what: problem?.what ?? notListed.what,
    // Sums of many floats may end a hair outside.
    probability: Math.min(1, Math.max(0, probability)),
    for: byWeight.filter(({ weight }) => weight >= LEAST_WEIGHT).map((reason) => reasonLine(guide, reason)),
    against: byWeight.filter(({ weight }) => weight <= -LEAST_WEIGHT).map((reason) => reasonLine(guide, reason)),
    ...movedOf(guide, name, plausible),
  }
}

/** What the season does to a problem, to be spread into its line; nothing where it does nothing worth a word. */
export function movedOf(guide: Guide, problem: string | null, plausible: readonly Plausible[]): Pick<LikelyLine, 'moved'> {
  const own = plausible.find((one) => one.problem === problem)
  return own === undefined || Math.abs(own.factor - 1) < LEAST_TOLD ? {} : { moved: movedLine(guide, own) }
}

function reasonLine(guide: Guide, reason: Reason): ReasonLine {
  const { check: name, answer, weight } = reason
  const check = checkNamed(guide, name)
  const seen = tellingWord(reason)
  return {
    check: name, ask: check?.ask ?? name, answer: check === null ? answer : answerShown(check, answer), weight,
    seen: seen !== null && isFrequencyWord(seen) ? wordingOf(guide).seen[seen] : seen,
  }
}

/**
 * The frequency word, where it tells why the finding stands on its side. What is seldom seen with a problem and still
 * speaks for it (it is rarer with everything else), or often seen and still speaks against it, stands without one.
 */
function tellingWord({ seen, weight }: Reason): string | null {
  if (seen === null || !isFrequencyWord(seen)) return seen
  return (weight > 0) === (frequencyShares[seen] >= OFTEN) ? seen : null
}

function isFrequencyWord(word: string): word is FrequencyWord {
  return word in frequencyShares
}
