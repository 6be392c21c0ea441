import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { hostNamed } from '../guide-names.js'

/** More guesses at the plant than this are a list to read, not a hint. */
const MOST_GUESSES = 2
/** Below this the first complaint heard is more often wrong than right. */
const PLAINLY_HEARD = 0.5

/**
 * The names of the plants that the words of a case may be about, best first, two at most. Plants that were named come
 * first; a complaint speaks for its plant only where it was plainly heard. None where only some plant or other was heard.
 */
export function plantGuesses(guide: Guide, { matched: { hosts, entries, confidence } }: Pick<CaseFile, 'matched'>): string[] {
  const heard = [...hosts, ...(confidence >= PLAINLY_HEARD ? entries : [])]
  const names = heard.flatMap(({ host }) => {
    const guess = hostNamed(guide, host)
    return guess === null || guess.isOfAnyPlant ? [] : [guess.name]
  })
  return [...new Set(names)].slice(0, MOST_GUESSES)
}

/**
 * The plant of a case for a list: its name, or, while nobody has settled it, the plants heard in the words ("Perhaps rose
 * or apple"). Null where no plant was heard.
 */
export function plantWords(guide: Guide, file: Pick<CaseFile, 'matched'>, reading: Pick<Reading, 'host'>): string | null {
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  if (host !== null) return host.name
  const guesses = plantGuesses(guide, file)
  return guesses.length === 0 ? null : `Perhaps ${guesses.map((name) => name.toLowerCase()).join(' or ')}`
}
