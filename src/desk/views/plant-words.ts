import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { hostNamed } from '../guide-names.js'

/** A case that nobody has placed is listed by at most so many of the plants heard in it. */
const MOST_GUESSES = 2

/**
 * The plant of a case for a list: its name, or, while nobody has settled it, the plants heard in the words ("Perhaps rose
 * or apple"). Null where no plant was heard.
 */
export function plantWords(guide: Guide, file: Pick<CaseFile, 'matched'>, reading: Pick<Reading, 'host'>): string | null {
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  if (host !== null) return host.name
  const heard = file.matched.hosts.flatMap((one) => {
    const guess = hostNamed(guide, one.host)
    return guess === null || guess.isOfAnyPlant ? [] : [guess.name]
  }).slice(0, MOST_GUESSES)
  return heard.length === 0 ? null : `Perhaps ${heard.map((name) => name.toLowerCase()).join(' or ')}`
}
