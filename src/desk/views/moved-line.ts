import type { MovedLine } from '../../../shared/index.js'
import { moveInWords, type Plausible, reasonInWords } from '../../season/index.js'

/** That the season moves a problem, as the screens say it. */
export function movedLine({ factor, reasons }: Omit<Plausible, 'problem'>): MovedLine {
  const isMoreLikely = factor >= 1
  return {
    direction: isMoreLikely ? 'more' : 'less', factor,
    reasons: reasons.map((reason) => ({ code: reason.code, values: { ...reason.values }, words: reasonInWords(reason) })),
    words: moveInWords(isMoreLikely, reasons),
  }
}
