import type { LikelyLine, ReasonLine } from '../../../shared/index.js'
import type { Differential, Likely, Reason } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { checkNamed, problemNamed } from '../guide-names.js'

export const NOT_LISTED = { name: 'Something not listed here', what: 'A cause that this guide does not know.' }

/** The whole differential, most likely first. */
export function likelyLines(guide: Guide, differential: Differential): LikelyLine[] {
  return differential.map((likely) => likelyLine(guide, likely))
}

/** One ranked problem with its reasons, the weightiest first. */
export function likelyLine(guide: Guide, { problem: name, probability, reasons }: Likely): LikelyLine {
  const problem = name === null ? null : problemNamed(guide, name)
  const byWeight = [...reasons].sort((a, b) => Math.abs(b.weight) - Math.abs(a.weight))
  return {
    problem: problem?.id ?? null, name: problem?.name ?? NOT_LISTED.name, what: problem?.what ?? NOT_LISTED.what,
    // Sums of many floats may end a hair outside.
    probability: Math.min(1, Math.max(0, probability)),
    for: byWeight.filter(({ weight }) => weight > 0).map((reason) => reasonLine(guide, reason)),
    against: byWeight.filter(({ weight }) => weight < 0).map((reason) => reasonLine(guide, reason)),
  }
}

function reasonLine(guide: Guide, { check, answer, seen, weight }: Reason): ReasonLine {
  return { check, ask: checkNamed(guide, check)?.ask ?? check, answer, seen, weight }
}
