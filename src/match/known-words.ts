import type { Guide } from '../guide/index.js'
import type { Speech } from './languages/speech.js'
import { tokenize } from './tokens.js'

/**
 * Words that are right as they stand: those of every day, and the guide's own running text. None is ever taken for a
 * misspelled plant or complaint: without this, "rows" would be a rose and "pest" a pea.
 */
export function knownWords(guide: Guide, { everydayWords }: Speech): ReadonlySet<string> {
  const words = new Set(everydayWords)
  const add = (text: string): void => {
    for (const token of tokenize(text)) words.add(token.text)
  }
  for (const check of guide.checks) {
    for (const text of [check.ask, check.how, check.why, ...check.answers.map(({ label }) => label)]) add(text)
  }
  for (const problem of guide.problems) {
    const { bottomLine, doNow, notWorthDoing, nextYear, spray } = problem.advice
    for (const text of [problem.what, bottomLine, spray, ...doNow, ...notWorthDoing, ...nextYear, ...problem.cautions]) add(text)
  }
  for (const redFlag of guide.redFlags) {
    for (const text of [redFlag.title, ...redFlag.card.doNow, ...redFlag.card.doNot]) add(text)
  }
  return words
}
