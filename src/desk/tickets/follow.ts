import type { LiveChange } from '../../../shared/index.js'
import { type Db, type News, personById, type Store } from '../../store/index.js'

/** Calls `hear` for each change of a ticket from now on, whichever process made it; the result ends it. */
export type FollowTickets = (hear: (change: LiveChange) => void) => () => void

/**
 * Turns the store's news into changes with the names of colleagues. All who follow share one ear, and one who throws
 * keeps nothing from the others.
 * @param report told of what a follower threw
 */
export function followTickets(db: Db, listen: Store['listen'], report: (fault: unknown, what: string) => void): FollowTickets {
  const hearers = new Set<(change: LiveChange) => void>()
  const names = new Map<number, string>()
  let isListening = false
  // One after another, so that a name being looked up does not let later news overtake.
  let told: Promise<void> = Promise.resolve()

  const tell = async (news: News): Promise<void> => {
    if (hearers.size === 0) return
    const change = {
      ticket: news.ticket === null ? null : String(news.ticket), kind: news.what, by: await nameOf(db, news.person, names),
    }
    for (const hear of [...hearers]) {
      try {
        hear(change)
      } catch (fault) {
        report(fault, 'somebody could not be told of a change')
      }
    }
  }
  return (hear) => {
    hearers.add(hear)
    if (!isListening) {
      isListening = true
      listen((news) => { told = told.then(() => tell(news)) })
    }
    return () => { hearers.delete(hear) }
  }
}

/** A colleague's name, which never changes; null when there is none or the store does not answer just now. */
async function nameOf(db: Db, person: number | null, names: Map<number, string>): Promise<string | null> {
  if (person === null) return null
  const known = names.get(person)
  if (known !== undefined) return known
  const name = (await personById(db, person).catch(() => undefined))?.name ?? null
  if (name !== null) names.set(person, name)
  return name
}
