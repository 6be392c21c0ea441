import type { MovedLine } from '../../../shared/index.js'
import { moveInWords, type Plausible, reasonInWords } from '../../season/index.js'

/** That the season moves a problem, as the screens say it, in the language of a guide. */
export function movedLine({ language }: { readonly language: string }, { factor, reasons }: Omit<Plausible, 'problem'>): MovedLine {
  const isMoreLikely = factor >= 1
  return {
    direction: isMoreLikely ? 'more' : 'less', factor,
    reasons: reasons.map((reason) => ({ code: reason.code, values: { ...reason.values }, words: reasonInWords(reason, language) })),
    words: moveInWords(isMoreLikely, reasons, language),
  }
}
