import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { problemNamed, redFlagNamed } from '../guide-names.js'

/** A problem that must be reported, or where a mistake is dangerous, is urgent from this probability on. */
export const URGENT_FROM = 0.1

/** Why a case is urgent, in words for the specialist, or null when it is not. */
export function urgencyOf(guide: Guide, reading: Pick<Reading, 'cards' | 'differential'>): string | null {
  const flags = reading.cards.flatMap((name) => redFlagNamed(guide, name) ?? [])
  const flag = flags.find(({ level }) => level === 'emergency') ?? flags[0]
  if (flag !== undefined) return `Red flag: ${flag.title}`

  for (const { problem: name, probability } of reading.differential) {
    const problem = name === null ? null : problemNamed(guide, name)
    if (problem === null || probability < URGENT_FROM) continue
    if (problem.cost === 'regulated') return `Could be ${problem.name}, to be reported`
    if (problem.cost === 'dangerous') return `Could be ${problem.name}, where a mistake is dangerous`
  }
  return null
}
