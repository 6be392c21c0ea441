import { LRUCache } from 'lru-cache'
import type { CaseView } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'

/** So many are kept; a busy helpline works on fewer cases at once, and a view takes some ten kilobytes. */
const MOST_KEPT = 512

/** Whether notes are in a view: they are for the people of the helpline only. */
export type Audience = 'asker' | 'helpline'

/** The views last made of cases, each at one revision. */
export interface KeptViews {
  /** The view last made of this case with this guide, at whichever revision that was. */
  last(guide: Guide, link: string, audience: Audience): CaseView | undefined
  /** Keeps a view, and freezes it: it is handed out again as it is. */
  keep(guide: Guide, view: CaseView, audience: Audience): CaseView
}

/**
 * Keeps the views of cases without a ticket: such a view is the same as long as revision and guide are, since every answer,
 * word, note and photo takes the case to its next revision. A ticket moves on without its case, so a view with one is
 * never kept. Whether a kept view still holds is for the store to say, which other processes write to as well
 * (`showCaseAt`). One for each desk, because links are names within one store; all of them go with their guide.
 */
export function keepViews(): KeptViews {
  const ofGuide = new WeakMap<Guide, LRUCache<string, CaseView>>()
  return {
    last: (guide, link, audience) => ofGuide.get(guide)?.get(`${link} ${audience}`),
    keep(guide, view, audience) {
      if (view.ticket !== null) return view
      const kept = ofGuide.get(guide) ?? new LRUCache<string, CaseView>({ max: MOST_KEPT })
      ofGuide.set(guide, kept)
      const whole = Object.freeze(view)
      kept.set(`${view.link} ${audience}`, whole)
      return whole
    },
  }
}
