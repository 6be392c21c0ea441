import type { Kysely } from 'kysely'
import { Language } from '../../shared/index.js'
import { type Guide, guideIn } from '../guide/index.js'
import { buildMatchIndex, type MatchIndex } from '../match/index.js'
import type { PhotoHome } from '../photos/index.js'
import type { Store, Tables } from '../store/index.js'
import type { KeyRing } from './privacy/key-ring.js'
import { keepViews, type KeptViews } from './views/kept-views.js'
import type { MailPlace } from './mail/mail-place.js'

/** What the desk is given to work with. */
export interface DeskParts {
  readonly db: Kysely<Tables>
  /** The store's ear for what any process changed. */
  readonly listen: Store['listen']
  /** The guide as it is now; asked anew for each piece of work, because it may be replaced while the service runs. */
  readonly guide: () => Guide
  readonly photos: PhotoHome
  /** Null where the service sends no mail. */
  readonly mail: MailPlace | null
  /** Told of faults that concern nobody who could be answered; a log, usually. */
  readonly report: (fault: unknown, what: string) => void
  readonly clock: () => Date
  readonly randomBytes: (count: number) => Uint8Array
  /** Seals contact details and the secrets of one-time codes. */
  readonly keys: KeyRing
}

/** The guide and what is built from it. */
export interface Knowledge {
  readonly guide: Guide
  readonly index: MatchIndex
}

/** The parts as the use cases take them. */
export interface Room {
  readonly db: Kysely<Tables>
  /** The guide as it was written, and the hearing of questions in a language; in the guide's own when none is named. */
  readonly knowledge: (language?: string) => Knowledge
  readonly photos: PhotoHome
  readonly mail: MailPlace | null
  readonly report: (fault: unknown, what: string) => void
  readonly now: () => Date
  readonly randomBytes: (count: number) => Uint8Array
  readonly keys: KeyRing
  readonly views: KeptViews
}

/** As much of the room as accounts need: no guide. */
export type PeopleRoom = Pick<Room, 'db' | 'now' | 'randomBytes'>

/** Lays the parts out for the use cases. */
export function furnishRoom(parts: DeskParts): Room {
  const knowledge = (language?: string): Knowledge => {
    const guide = parts.guide()
    return { guide, index: indexOf(language === undefined ? guide : guideIn(guide, language)) }
  }
  // Now, or the first asker would wait for it.
  for (const language of Language.options) knowledge(language)
  return {
    db: parts.db, knowledge, photos: parts.photos, mail: parts.mail, report: parts.report, now: parts.clock,
    randomBytes: parts.randomBytes, keys: parts.keys, views: keepViews(),
  }
}

/** Building an index takes a good part of a second, so it is done once for each guide. */
const indexes = new WeakMap<Guide, MatchIndex>()

function indexOf(guide: Guide): MatchIndex {
  const known = indexes.get(guide)
  if (known !== undefined) return known
  const index = buildMatchIndex(guide)
  indexes.set(guide, index)
  return index
}
