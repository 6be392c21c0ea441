import type { RuleContext } from '../rule-context.js'
import { LOWEST_SPANISH_EASE, spanishEase } from '../translation/spanish-ease.js'
import type { HeldTranslation } from '../translation/translation-draft.js'

/** Texts shorter than this are not measured: the formula means little on a few words. */
const LEAST_WORDS = 8

/** Languages with a published formula, what it gives at least, and the words for that. */
const scales: ReadonlyMap<string, { readonly ease: (text: string) => number; readonly least: number }> = new Map([
  ['es', { ease: spanishEase, least: LOWEST_SPANISH_EASE }],
])

/** Warning. Translated text for askers is at least "fairly easy" on the scale of its language. Lists are measured as one text, how and why together, as in English. */
export function translationsReadEasilyRule(context: RuleContext): void {
  for (const held of context.guide.translations) {
    const scale = scales.get(held.draft.language.split('-')[0] ?? '')
    if (scale === undefined) continue
    for (const { names, at, text } of passages(held)) {
      if (text.split(/\s+/).length < LEAST_WORDS) continue
      const ease = scale.ease(text)
      if (ease >= scale.least) continue
      context.warn({
        code: 'READING_EASE', at: [at], of: { id: held.draft.id, accepts: held.draft.accepts },
        message: `"${names}" has reading ease ${ease.toFixed(1)}. Expected ${scale.least} or above: shorter sentences, shorter words.`,
      })
    }
  }
}

function passages({ texts }: HeldTranslation): { names: string; at: HeldTranslation['texts'][number]['at']; text: string }[] {
  const measured = texts.filter(({ slot, words }) => (slot.kind === 'text' || slot.kind === 'list') && words !== null)
  const how = measured.find(({ slot }) => slot.path.join() === 'how')
  const why = measured.find(({ slot }) => slot.path.join() === 'why')
  return measured.filter((text) => text !== why || how === undefined).map((text) => {
    const together = text === how && why !== undefined ? [how, why] : [text]
    return {
      names: together.map(({ slot }) => slot.path.join(' → ')).join(' and '), at: text.at,
      text: together.flatMap(({ words }) => words ?? []).map((words) => (/[.!?]\s*$/.test(words) ? words : `${words}.`)).join(' '),
    }
  })
}
