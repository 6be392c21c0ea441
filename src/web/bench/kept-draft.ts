import type { TicketView } from '../../../shared/index.js'

/** What a specialist has begun to write about a ticket. */
export interface AnswerDraft {
  readonly outcome: 'problem' | 'not known' | 'not a plant problem'
  readonly problem: string
  readonly text: string
}

/** The draft kept in this tab for a ticket, or null. A reload or a look at another ticket must not cost a written answer. */
export function readDraft(ticket: string): AnswerDraft | null {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(place(ticket)) ?? 'null')
    return isDraft(kept) ? kept : null
  } catch {
    return null
  }
}

export const emptyDraft: AnswerDraft = { outcome: 'problem', problem: '', text: '' }

/** The draft that changing an answer begins from. */
export function draftOfReply(reply: TicketView['replies'][number] | undefined): AnswerDraft | null {
  return reply === undefined ? null : { outcome: reply.outcome, problem: reply.problem ?? '', text: reply.text }
}

/** Keeps the draft, or forgets it when it is null or empty. */
export function keepDraft(ticket: string, draft: AnswerDraft | null): void {
  try {
    if (draft === null || (draft.text === '' && draft.problem === '')) sessionStorage.removeItem(place(ticket))
    else sessionStorage.setItem(place(ticket), JSON.stringify(draft))
  } catch { /* Then it lasts until the sheet is left. */ }
}

function isDraft(kept: unknown): kept is AnswerDraft {
  return typeof kept === 'object' && kept !== null && 'outcome' in kept && 'problem' in kept && 'text' in kept
    && OUTCOMES.includes(String(kept.outcome)) && typeof kept.problem === 'string' && typeof kept.text === 'string'
}

function place(ticket: string): string {
  return `frondline answer to ticket ${ticket}`
}

const OUTCOMES = ['problem', 'not known', 'not a plant problem']
