import type { TicketView } from '../../../shared/index.js'
import { blankLetter, type Letter } from './letter.js'

/** What a specialist has begun to write about a ticket. */
export interface AnswerDraft {
  readonly outcome: 'problem' | 'not known' | 'not a plant problem'
  readonly problem: string
  readonly letter: Letter
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

export const emptyDraft: AnswerDraft = { outcome: 'problem', problem: '', letter: blankLetter }

/** The draft that changing an answer begins from. */
export function draftOfReply(reply: TicketView['replies'][number] | undefined): AnswerDraft | null {
  if (reply === undefined) return null
  const problem = reply.problem ?? ''
  return { outcome: reply.outcome, problem, letter: { ...blankLetter, text: reply.text, suits: endOf({ outcome: reply.outcome, problem }) } }
}

/** The end that a draft is heading for: the problem's name, or the outcome without one; '' while no problem is chosen. */
export function endOf({ outcome, problem }: Pick<AnswerDraft, 'outcome' | 'problem'>): string {
  return outcome === 'problem' ? problem : outcome
}

/** Keeps the draft, or forgets it when it is null or empty. */
export function keepDraft(ticket: string, draft: AnswerDraft | null): void {
  try {
    if (draft === null || (draft.letter.text === '' && draft.letter.replaced === '' && draft.problem === '')) sessionStorage.removeItem(place(ticket))
    else sessionStorage.setItem(place(ticket), JSON.stringify(draft))
  } catch { /* Then it lasts until the sheet is left. */ }
}

function isDraft(kept: unknown): kept is AnswerDraft {
  return typeof kept === 'object' && kept !== null && 'outcome' in kept && 'problem' in kept && 'letter' in kept
    && OUTCOMES.includes(String(kept.outcome)) && typeof kept.problem === 'string' && isLetter(kept.letter)
}

function isLetter(kept: unknown): kept is Letter {
  return typeof kept === 'object' && kept !== null
    && Object.keys(blankLetter).every(part => part in kept && typeof kept[part as keyof typeof kept] === 'string')
}

function place(ticket: string): string {
  return `frondline answer to ticket ${ticket}`
}

const OUTCOMES = ['problem', 'not known', 'not a plant problem']
