import type { SessionState } from './case-session.js'

/** The answer to this check that was sent or is kept for later. */
export function answerOnItsWay(state: SessionState, check: string): string | null {
  const { errand } = state
  return errand?.kind === 'change' && errand.change.path === 'answers' && errand.change.body.check === check ? errand.change.body.answer : null
}
