import type { RuleContext } from '../rule-context.js'
import { filesOfHost } from '../translation/files-of-host.js'
import { idOf, type Original } from '../translation/texts-of.js'
import type { HeldTranslation } from '../translation/translation-draft.js'
import { fileState } from '../translation/translation-state.js'

/** More texts of one file than this are counted, not named. */
const MOST_NAMED = 6

/**
 * Warnings. Where a translation says `complete: yes`, nothing of it is missing or out of date: of a host, its problems
 * and checks too. Never errors: a late translation must not hold back a change to the guide itself.
 */
export function translationsCompleteRule(context: RuleContext): void {
  const { guide: linked } = context
  const told = new Set<string>()
  for (const held of linked.translations) {
    if (!held.draft.complete) continue
    const files = held.original.kind === 'host' ? filesOfHost(linked, idOf(held.original)) : [held.original]
    for (const original of files) tell(context, held, original, told)
  }
}

function tell(context: RuleContext, claim: HeldTranslation, original: Original, told: Set<string>): void {
  const { language } = claim.draft
  const name = `${language} ${original.kind} ${idOf(original)}`
  if (told.has(name)) return
  told.add(name)
  const state = fileState(context.guide, original, language)
  const file = `${original.kind} "${idOf(original)}"`
  const by = `the ${claim.draft.of} "${claim.draft.id.value}" says that it is complete in "${language}"`
  if (state.missing.length > 0) {
    const first = state.translation?.texts.find((text) => text.state === 'missing' && text.slot.needed)
    context.warn({
      code: 'NOT_TRANSLATED', at: [first?.at ?? claim.draft.id.at], ...of(claim),
      message: `The ${file} ${state.translation === null ? 'is not translated' : `lacks ${named(state.missing)}`}, but ${by}.`,
    })
  }
  const stale = state.translation?.texts.find((text) => text.state === 'out of date')
  if (stale !== undefined) {
    context.warn({
      code: 'TRANSLATION_OUT_OF_DATE', at: [stale.at], ...of(claim),
      message: `The ${file} was changed since it was translated (${named(state.outOfDate)}), but ${by}.`,
    })
  }
}

function of({ draft }: HeldTranslation): { of: { id: typeof draft.id; accepts: typeof draft.accepts } } {
  return { of: { id: draft.id, accepts: draft.accepts } }
}

function named(texts: readonly string[]): string {
  const some = texts.slice(0, MOST_NAMED).map((text) => `"${text}"`).join(', ')
  return texts.length > MOST_NAMED ? `${some} and ${texts.length - MOST_NAMED} more` : some
}
