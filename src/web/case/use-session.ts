import { useEffect, useState } from 'preact/hooks'
import type { CaseSession, SessionState } from './case-session.js'

/** The session's state, followed as it changes. */
export function useSession(session: CaseSession): SessionState {
  const [state, setState] = useState(session.state())
  useEffect(() => {
    setState(session.state())
    return session.watch(setState)
  }, [session])
  return state
}
