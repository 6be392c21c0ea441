import type { CaseView } from '../../../shared/index.js'
import { UNKNOWN_PLANT } from '../case/unknown-plant.js'

/** The plants whose problems come first: the ticket's own, or those that its words may mean. */
export function plantsFirst({ host, entries, hosts }: Pick<CaseView['place'], 'host' | 'entries' | 'hosts'>): readonly string[] {
  if (host !== null && host.host !== UNKNOWN_PLANT) return [host.host]
  return [...new Set([...entries, ...hosts].map(offer => offer.host))].filter(name => name !== UNKNOWN_PLANT).slice(0, MOST_PLANTS)
}

const MOST_PLANTS = 3
