import { EventEmitter } from 'node:events'
import type { Database } from 'better-sqlite3'
import { ANYTHING, type News, type Newsroom, readNews } from './news.js'

/** How often another process's writes are looked for, in milliseconds; the command line may write while we serve. */
const LOOK_MS = 1000

/** The newsroom of one connection, and what its driver has to say when a transaction ends. */
export interface SqliteNewsroom extends Newsroom {
  committed(): void
  rolledBack(): void
}

/** News of this process as they are, and of other processes only that there are some: SQLite does not say what. */
export function sqliteNewsroom(database: Database): SqliteNewsroom {
  const heard = new EventEmitter().setMaxListeners(0)
  let untold: string[] = []
  const committed = (): void => {
    const told = untold
    untold = []
    for (const text of told) heard.emit('news', readNews(text))
  }
  database.function('pg_notify', { directOnly: true }, (_channel: unknown, text: unknown) => {
    untold.push(String(text))
    if (!database.inTransaction) committed()
    return null
  })

  let version = writesOfOthers(database)
  let look: NodeJS.Timeout | null = null
  const lookOnce = (): void => {
    const now = writesOfOthers(database)
    if (now !== version) heard.emit('news', ANYTHING)
    version = now
  }
  return {
    listen(hear: (news: News) => void) {
      heard.on('news', hear)
      if (look === null) {
        version = writesOfOthers(database)
        look = setInterval(lookOnce, LOOK_MS).unref()
      }
      return () => { heard.off('news', hear) }
    },
    committed,
    rolledBack: () => { untold = [] },
    close() {
      if (look !== null) clearInterval(look)
      heard.removeAllListeners()
      return Promise.resolve()
    },
  }
}

/** A number that changes whenever another connection commits to the file. */
function writesOfOthers(database: Database): unknown {
  return database.pragma('data_version', { simple: true })
}
