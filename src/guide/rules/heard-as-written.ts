import { misheard } from '../passing-words.js'
import type { RuleContext } from '../rule-context.js'

/**
 * Error. A group word of a red flag, or of a set of words, is heard as it is written: not in one word alone because the
 * others in it are passed over, and not in the halves of a word with a mark inside.
 */
export function heardAsWrittenRule(context: RuleContext): void {
  const { redFlags, wordSets } = context.guide
  for (const { groupWords } of [...redFlags.values(), ...(wordSets === null ? [] : [wordSets])]) {
    for (const { value, at } of groupWords) {
      const heard = misheard(value)
      if (heard === null) continue
      context.error({
        code: 'NOT_HEARD_AS_WRITTEN', at: [at],
        message: heard.kind === 'one word is left'
          ? `"${value}" is heard in every "${heard.heardAs}", as the other words in it are passed over. Expected "${heard.heardAs}", or more words that tell something.`
          : `"${value}" is heard as ${heard.heardAs}, as marks part words. Expected words with spaces between them.`,
      })
    }
  }
}
