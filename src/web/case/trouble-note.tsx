import type { CaseSession, SessionState } from './case-session.js'
import { useWording } from '../wording/language.js'

/** What went wrong with the last errand, kindly, and what still works. */
export function TroubleNote({ state, session }: { readonly state: SessionState, readonly session: CaseSession }) {
  const words = useWording().trouble
  const { trouble, errand } = state
  if (trouble === null) return null
  if (trouble.kind === 'lost') {
    const kept = errand?.kind === 'change' && errand.change.path === 'answers' ? errand.change.body.answer : null
    return (
      <div class="trouble" role="status">
        <p>{trouble.detail !== null ? words.busy(trouble.detail) : kept === null ? words.lost : words.lostAnswer(kept)}</p>
        <p class="row">
          <button type="button" class="main" disabled={state.sending} onClick={session.tryAgain}>{words.again}</button>
          {trouble.nextAt !== null && <span class="hint">{words.trying}</span>}
        </p>
      </div>
    )
  }
  const said = trouble.kind === 'stale' ? words.stale : trouble.kind === 'gone' ? words.gone : words.refused(trouble.detail)
  return (
    <div class="trouble" role="status">
      <p>{said}</p>
      <p><button type="button" class="quiet" onClick={session.dismiss}>{words.close}</button></p>
    </div>
  )
}
