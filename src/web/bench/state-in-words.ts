import type { TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'

/** Where a ticket stands and with whom, for the head of its sheet. */
export function stateInWords(view: Pick<TicketView, 'state' | 'takenBy' | 'openedAt' | 'mergedInto'>): string {
  const whose = view.takenBy === null ? '' : `, with ${view.takenBy}`
  switch (view.state) {
    case 'waiting': return `Waiting since ${momentInWords(view.openedAt)}`
    case 'taken': return `With ${view.takenBy ?? 'a specialist'}`
    case 'asked back': return `Asked back${whose}`
    case 'answered by asker': return `The asker has answered${whose}`
    case 'sent as a sample': return `At the laboratory${whose}`
    case 'settled': return `Settled${view.takenBy === null ? '' : ` by ${view.takenBy}`}`
    case 'merged': return `Merged into ticket ${view.mergedInto ?? '?'}`
  }
}
