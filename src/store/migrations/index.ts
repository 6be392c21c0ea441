import type { Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'
import { firstTables } from './0001-first-tables.js'
import { ticketTables } from './0002-tickets.js'
import { peopleTables } from './0003-people.js'
import { photos } from './0004-photos.js'
import { outbox } from './0005-outbox.js'
import { duties } from './0006-duties.js'
import { openingKey } from './0007-opening-key.js'
import { requestCounts } from './0008-request-counts.js'
import { practice } from './0009-practice.js'
import { weather } from './0010-weather.js'
import { language } from './0012-language.js'
import { season } from './0013-season.js'
import { inventedSeason } from './0014-invented-season.js'
import { weeklyNote } from './0015-weekly-note.js'

/**
 * Every migration by name, in the order of the names. A migration that has been released is never edited; a change
 * is a new one.
 */
export function migrationsFor(kinds: ColumnKinds): Record<string, Migration> {
  return {
    '0001-first-tables': firstTables(kinds),
    '0002-tickets': ticketTables(kinds),
    '0003-people': peopleTables(kinds),
    '0004-photos': photos,
    '0005-outbox': outbox(kinds),
    '0006-duties': duties,
    '0007-opening-key': openingKey(),
    '0008-request-counts': requestCounts,
    '0009-practice': practice,
    '0010-weather': weather(kinds),
    '0012-language': language,
    '0013-season': season(kinds),
    '0014-invented-season': inventedSeason,
    '0015-weekly-note': weeklyNote(kinds),
  }
}
