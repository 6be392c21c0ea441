import { useEffect, useState } from 'preact/hooks'
import type { GuideState } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'

/** A quiet line under the masthead: a guide taken up while this page is open, or a change to it that was refused. */
export function GuideNews({ service }: { readonly service: StaffService }) {
  const [first, setFirst] = useState<string | null>(null)
  const [state, setState] = useState<GuideState | null>(null)
  useEffect(() => {
    const look = () => {
      if (document.visibilityState !== 'visible') return
      void service.guideState().then(reply => {
        if (!reply.ok) return
        setState(reply.value)
        setFirst(known => known ?? reply.value.guide)
      })
    }
    look()
    const timer = setInterval(look, LOOK_EVERY_MS)
    document.addEventListener('visibilitychange', look)
    return () => { clearInterval(timer); document.removeEventListener('visibilitychange', look) }
  }, [service])
  return <div class="guide-news" role="status">{state !== null && <News state={state} isNew={first !== null && state.guide !== first} />}</div>
}

function News({ state, isNew }: { readonly state: GuideState, readonly isNew: boolean }) {
  if (state.refused !== null) {
    const [summary = '', ...rest] = state.refused.reason.split('\n')
    return (
      <details>
        <summary>A change to the guide on {momentInWords(state.refused.at)} was not taken up. The guide before it is still in use.</summary>
        <p>{summary}</p>
        {rest.length > 0 && <pre>{rest.join('\n')}</pre>}
      </details>
    )
  }
  return isNew ? <p>The guide was renewed on {momentInWords(state.since)}. Sheets go on with the new one.</p> : null
}

const LOOK_EVERY_MS = 60_000
