import type { CaseChange } from './case-change.js'

/** A change that is not on the sheet yet, with the answer that its line had when it was made. */
export interface WaitingChange {
  readonly change: CaseChange
  readonly before: string | null
}

/**
 * Keeps in the browser tab what could not be sent to a case: a phone that is out of sight drops a page and loads it anew.
 * A hand-over is not kept, for the contact in it. Storage may be closed to the page: then it lasts as long as the page.
 */
export function keepChanges(link: string, waiting: readonly WaitingChange[]): void {
  const kept = waiting.filter(({ change }) => change.path !== 'hand-over')
  try {
    if (kept.length === 0) sessionStorage.removeItem(keyOf(link))
    else sessionStorage.setItem(keyOf(link), JSON.stringify(kept))
  } catch { /* Then it lasts as long as the page. */ }
}

/** What was kept for a case; what does not read as a change is left out. */
export function keptChanges(link: string): readonly WaitingChange[] {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(link)) ?? '[]')
    return Array.isArray(kept) ? kept.filter(isWaiting) : []
  } catch {
    return []
  }
}

/** Loose on purpose: the service has the last word on what a change may be. */
function isWaiting(kept: unknown): kept is WaitingChange {
  return typeof kept === 'object' && kept !== null && 'change' in kept && 'before' in kept
    && typeof kept.change === 'object' && kept.change !== null && 'path' in kept.change && 'body' in kept.change && typeof kept.change.body === 'object'
}

function keyOf(link: string): string {
  return `frondline waiting ${link}`
}
