import { closestNames } from '../closest-names.js'
import { PLANT_NAMES } from '../word-sets.js'
import type { RuleContext } from '../rule-context.js'

/** Error. Every set of words that a red flag or another set names stands in word-sets.yaml. */
export function knownWordSetsRule(context: RuleContext): void {
  const { redFlags, wordSets } = context.guide
  const names = [...(wordSets?.sets.keys() ?? []), PLANT_NAMES]
  for (const { setsUsed } of [...redFlags.values(), ...(wordSets === null ? [] : [wordSets])]) {
    for (const set of setsUsed) {
      if (names.includes(set.value)) continue
      context.error({
        code: 'UNKNOWN_WORD_SET', at: [set.at], nearest: closestNames(set.value, names),
        message: `No set of words is called "${set.value}". Expected the name of a set in word-sets.yaml.`,
      })
    }
  }
}
