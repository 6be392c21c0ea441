import type { SessionState } from './case-session.js'

/** The answer to this check that was sent or is kept for later; of several the last. */
export function answerOnItsWay({ errand, queue }: Pick<SessionState, 'errand' | 'queue'>, check: string): string | null {
  const waiting = [...(errand?.kind === 'change' ? [errand.change] : []), ...queue]
  const last = waiting.findLast(change => change.path === 'answers' && change.body.check === check)
  return last?.path === 'answers' ? last.body.answer : null
}
