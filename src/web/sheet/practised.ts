import { MOST_PRACTISED, type PracticeCall } from '../../../shared/index.js'

const KEPT = 'frondline practised'

/** The worked cases that were practised in this browser, the latest last; those longest ago are forgotten first. */
export function practisedBefore(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? '[]')
    if (Array.isArray(kept)) return kept.filter(name => typeof name === 'string').slice(-MOST_PRACTISED)
  } catch { /* Nothing kept, or kept by an older page. */ }
  return []
}

/** Keeps that a worked case has been practised; after the last one the round begins anew. */
export function rememberPractised({ practice, left }: PracticeCall): void {
  const done = left === 1 ? [] : [...practisedBefore(), practice]
  try { localStorage.setItem(KEPT, JSON.stringify(done)) } catch { /* A browser that keeps nothing still practises. */ }
}
