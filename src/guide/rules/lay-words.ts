import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/**
 * Every lay word stands in one group of alike words only, and no plant among the other plants is a host's name.
 * Errors: a word in two groups would make everything in both mean the same.
 */
export function layWordsRule(context: RuleContext): void {
  const { layWords, hosts } = context.guide
  if (layWords === null) return
  const seen = new Map<string, Located<string>>()
  for (const word of layWords.alike.flat()) {
    const first = seen.get(plain(word.value))
    if (first === undefined) seen.set(plain(word.value), word)
    else {
      context.error({
        code: 'LAY_WORD_TWICE', at: [word.at, first.at],
        message: `The word "${word.value}" stands twice among the alike words. Expected it in one group, once.`,
      })
    }
  }
  const names = new Map([...hosts.values()].flatMap((host) => host.called.map((name) => [plain(name.value), { host, name }] as const)))
  for (const plant of layWords.otherPlants) {
    const held = names.get(plain(plant.value))
    if (held === undefined) continue
    context.error({
      code: 'PLANT_IS_HOST', at: [plant.at, held.name.at],
      message: `"${plant.value}" is a name of the host "${held.host.id.value}". Expected only plants that no host stands for.`,
    })
  }
}

function plain(word: string): string {
  return word.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
}
