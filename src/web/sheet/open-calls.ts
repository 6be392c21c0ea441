import type { PracticeCall } from '../../../shared/index.js'
import { createCaseSession, type CaseSession } from '../case/case-session.js'
import type { StaffService } from '../wire/staff-service.js'

/** One call on the desk: a case, or a blank sheet the volunteer is still typing on. */
export interface OpenCall {
  readonly number: number
  readonly session: CaseSession
  /** Words typed on a blank sheet, kept so that a reload loses nothing. */
  draft: string
  /** The worked case of a practice call that is not opened yet. */
  readonly practice: PracticeCall | null
}

/** Two, because a volunteer can hold one caller while helping another; more would be a queue, which is not theirs to keep. */
export const MOST_CALLS = 2

/** The calls of this browser window and the one in hand. */
export interface CallDesk {
  readonly calls: readonly OpenCall[]
  readonly current: OpenCall
}

/** A blank call with the lowest number not in use. */
export function blankCall(service: StaffService, taken: readonly OpenCall[], draft = '', practice: PracticeCall | null = null): OpenCall {
  let number = 1
  while (taken.some(call => call.number === number)) number += 1
  return { number, session: createCaseSession(service), draft, practice }
}

/** Takes up the person's open calls and the blank sheets left in this window; at least one blank sheet is always there. */
export async function takeUpCalls(service: StaffService): Promise<CallDesk> {
  const kept = readKept()
  const reply = await service.calls()
  const rows = reply.ok ? [...reply.value.calls].reverse() : []
  const calls: OpenCall[] = []
  for (const row of rows) {
    const call = blankCall(service, calls)
    call.session.load(row.link)
    calls.push(call)
  }
  for (const draft of kept.drafts) if (calls.length < MOST_CALLS) calls.push(blankCall(service, calls, draft))
  const first = calls[0] ?? blankCall(service, calls)
  if (calls.length === 0) calls.push(first)
  return { calls, current: calls.find(call => call.number === kept.inHand) ?? first }
}

/** Keeps what the service does not know: drafts, and which call is in hand. */
export function keepDesk({ calls, current }: CallDesk): void {
  const kept: Kept = { inHand: current.number, drafts: calls.filter(call => call.session.state().view === null && call.draft !== '').map(call => call.draft) }
  try { sessionStorage.setItem(KEPT, JSON.stringify(kept)) } catch { /* A window that keeps nothing still works. */ }
}

interface Kept { inHand: number, drafts: string[] }

function readKept(): Kept {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEPT) ?? '')
    if (typeof kept === 'object' && kept !== null && 'inHand' in kept && 'drafts' in kept && typeof kept.inHand === 'number' && Array.isArray(kept.drafts)) {
      return { inHand: kept.inHand, drafts: kept.drafts.filter(draft => typeof draft === 'string') }
    }
  } catch { /* Nothing kept, or kept by an older page. */ }
  return { inHand: 1, drafts: [] }
}

const KEPT = 'frondline call desk'
