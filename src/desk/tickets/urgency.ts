import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { problemNamed, redFlagNamed } from '../guide-names.js'

/** A problem that must be reported, or where a mistake is dangerous, is urgent from this probability on. */
export const URGENT_FROM = 0.1

/** How urgent a case is. */
export interface Urgency {
  /** 2 for a red flag, 1 for a problem to be reported or dangerous. */
  readonly level: 1 | 2
  /** In words for the specialist. */
  readonly why: string
}

/** How urgent a case is and why, or null when it is not. */
export function urgencyOf(guide: Guide, reading: Pick<Reading, 'cards' | 'differential'>): Urgency | null {
  const flags = reading.cards.flatMap((name) => redFlagNamed(guide, name) ?? [])
  const flag = flags.find(({ level }) => level === 'emergency') ?? flags[0]
  if (flag !== undefined) return { level: 2, why: `Red flag: ${flag.title}` }

  for (const { problem: name, probability } of reading.differential) {
    const problem = name === null ? null : problemNamed(guide, name)
    if (problem === null || probability < URGENT_FROM) continue
    if (problem.cost === 'regulated') return { level: 1, why: `Could be ${problem.name}, to be reported` }
    if (problem.cost === 'dangerous') return { level: 1, why: `Could be ${problem.name}, where a mistake is dangerous` }
  }
  return null
}
