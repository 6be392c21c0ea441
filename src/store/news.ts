import { sql } from 'kysely'
import { z } from 'zod'
import type { Db } from './db.js'

/** What is told to every process once it is in the store. Numbers only, no personal data. */
export const News = z.object({
  /** The ticket that changed; null when it is not known what changed, so that anything may have. */
  ticket: z.number().nullable(),
  /** The kind of change, such as 'taken'. */
  what: z.string(),
  /** The row number of the person who changed it, null for the asker. */
  person: z.number().nullable(),
})
export type News = z.infer<typeof News>

/** Told when something may have changed without our being told what. */
export const ANYTHING: News = { ticket: null, what: 'anything', person: null }

/** The PostgreSQL channel of the news. */
export const CHANNEL = 'frondline_news'

/**
 * Tells every process of a change, when and only when the transaction is committed. The function is PostgreSQL's own;
 * the SQLite connection has one of the same name.
 */
export async function announce(db: Db, news: News): Promise<void> {
  await sql`select pg_notify(${CHANNEL}, ${JSON.stringify(news)})`.execute(db)
}

/** Tells every process that the case behind a ticket changed; nothing is told of a case without a ticket. */
export async function announceCase(db: Db, caseId: number, person: number | null): Promise<void> {
  const rest = `,"what":"case","person":${person === null ? 'null' : String(person)}}`
  await sql`select pg_notify(${CHANNEL}, '{"ticket":' || id || ${rest}) from ticket where case_id = ${caseId}`.execute(db)
}

/** Reads news as they came; what cannot be read, as from a later version of this program, is anything. */
export function readNews(text: string): News {
  try {
    return News.parse(JSON.parse(text))
  } catch {
    return ANYTHING
  }
}

/** Hears news until it is stopped. */
export interface Newsroom {
  /** Calls `hear` for each piece of news from now on; the result ends it. */
  listen(hear: (news: News) => void): () => void
  close(): Promise<void>
}
