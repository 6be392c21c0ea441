import type { TicketView } from '../../../shared/index.js'

/** The parts of the sheet that open to be filled in; one at a time. */
export type FormName = 'answer' | 'ask back' | 'sample' | 'result' | 'hand on' | 'note' | 'kin' | 'reopen'

export interface TicketAction {
  readonly key: string
  readonly words: string
  readonly does:
    | { readonly kind: 'open', readonly form: FormName }
    | { readonly kind: 'send', readonly path: 'take' | 'give-back' | 'unmerge' }
}

/** What can be done with a ticket now, each with its key; the most usual first. Nothing that the service would refuse is offered. */
export function ticketActions({ moves, samples }: Pick<TicketView, 'moves' | 'samples'>): readonly TicketAction[] {
  const may = (move: TicketView['moves'][number]) => moves.includes(move)
  const open = (key: string, words: string, form: FormName): TicketAction => ({ key, words, does: { kind: 'open', form } })
  const send = (key: string, words: string, path: 'take' | 'give-back' | 'unmerge'): TicketAction => ({ key, words, does: { kind: 'send', path } })
  return [
    ...(may('take') ? [send('T', 'Take this ticket', 'take')] : []),
    ...(may('settle') ? [open('A', 'Answer and settle', 'answer')] : may('amend') ? [open('A', 'Change the answer', 'answer')] : []),
    ...(may('ask back') ? [open('Q', 'Ask the asker back', 'ask back')] : []),
    ...(may('record result') && samples.some(sample => sample.result === null) ? [open('R', 'Write down the laboratory’s result', 'result')] : []),
    ...(may('send sample') ? [open('S', 'Send a sample to a laboratory', 'sample')] : []),
    open('N', 'Note for colleagues', 'note'),
    ...(may('hand on') ? [open('H', 'Hand to a colleague', 'hand on')] : []),
    ...(may('give back') ? [send('B', 'Give back to the waiting ones', 'give-back')] : []),
    open('K', may('merge') ? 'Link or merge tickets' : 'Link tickets', 'kin'),
    ...(may('reopen') ? [open('O', 'Take the answer back', 'reopen')] : []),
    ...(may('unmerge') ? [send('U', 'Take apart again', 'unmerge')] : []),
  ]
}
