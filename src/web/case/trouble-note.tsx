import type { CaseSession, SessionState } from './case-session.js'
import { useNetwork } from './use-network.js'
import { useWording } from '../wording/language.js'
import { checkIn } from './check-in.js'
import { answerInWords } from './told.js'

/** What went wrong with the last errand, kindly, what is kept, and what still works; and that there is no network, before anything was tried. */
export function TroubleNote({ state, session }: { readonly state: SessionState, readonly session: CaseSession }) {
  const { trouble: words, calm } = useWording()
  const hasNetwork = useNetwork()
  const { trouble, errand, queue } = state
  if (trouble === null && hasNetwork) return null
  if (trouble === null || trouble.kind === 'lost') {
    const kept = errand?.kind === 'change' && errand.change.path === 'answers' ? answerInWords(checkIn(state.view, errand.change.body.check), errand.change.body.answer, calm) : null
    const waiting = (errand === null ? 0 : 1) + queue.length
    return (
      <div class={hasNetwork ? 'trouble' : 'trouble no-network'} role="status">
        {!hasNetwork && <p><b>{words.noNetwork}</b></p>}
        <p>{waiting > 1 ? words.lostSeveral(waiting) : !hasNetwork && waiting === 0 ? words.goOn : trouble?.detail != null ? words.busy(trouble.detail) : kept === null ? words.lost : words.lostAnswer(kept)}</p>
        {trouble !== null && (
          <p class="row">
            <button type="button" class="main" disabled={state.sending} onClick={session.tryAgain}>{words.again}</button>
            {(trouble.nextAt !== null || !hasNetwork) && <span class="hint">{words.trying}</span>}
          </p>
        )}
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
