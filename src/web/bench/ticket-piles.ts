import type { TicketWanted } from '../wire/ticket-service.js'

/** A pile of tickets on the bench, with its key. */
export interface Pile {
  readonly name: 'waiting' | 'mine' | 'open' | 'settled' | 'found'
  readonly words: string
  readonly key: string
  /** Said when the pile has none. */
  readonly none: string
}

export type PileName = Pile['name']

export const piles: readonly Pile[] = [
  { name: 'waiting', words: 'Waiting', key: '1', none: 'Nobody is waiting.' },
  { name: 'mine', words: 'With me', key: '2', none: 'You have no open ticket.' },
  { name: 'open', words: 'All open', key: '3', none: 'No ticket is open.' },
  { name: 'settled', words: 'Settled', key: '4', none: 'None is settled yet.' },
]

export const foundPile: Pile = { name: 'found', words: 'Found', key: 'F', none: 'No ticket fits. Try fewer words.' }

/** What to ask the service for, to see a pile. */
export function wantedIn(pile: PileName, me: string, sought: Partial<TicketWanted>): Partial<TicketWanted> {
  switch (pile) {
    case 'waiting': return { state: 'waiting' }
    case 'mine': return { state: 'open', with: me }
    case 'open': return { state: 'open' }
    case 'settled': return { state: 'settled' }
    case 'found': return { state: 'any', ...sought }
  }
}
