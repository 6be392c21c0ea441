import type { Guide } from '../../guide/index.js'
import { redFlagNamed } from '../guide-names.js'
import type { CaseContent } from './case-change.js'
import type { CaseFile } from './case-file.js'
import { readCaseFile } from './read-case-file.js'

/**
 * Keeps every card that an answer has raised, so that it stays even if the answer is changed later; and takes back
 * 'carry on' when a card appears that must be seen before anything goes on.
 */
export function keepCards(guide: Guide, before: CaseFile, after: CaseContent): CaseContent {
  const seen = new Set(readCaseFile(guide, before).cards)
  const cards = readCaseFile(guide, { ...before, ...after }).cards
  const stopsAgain = cards.some((name) => {
    const flag = redFlagNamed(guide, name)
    return flag !== null && (flag.level === 'emergency' || flag.then === 'stop') && !seen.has(name)
  })
  return {
    ...after,
    evidence: {
      ...after.evidence,
      redFlags: [...new Set([...after.evidence.redFlags, ...cards])],
      carriedOn: after.evidence.carriedOn && !stopsAgain,
    },
  }
}
