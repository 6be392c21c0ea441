import { EventEmitter } from 'node:events'
import type { Database } from 'better-sqlite3'
import type { Ending } from './group-commit.js'
import { ANYTHING, type News, type Newsroom, readNews } from './news.js'

/** How often another process's writes are looked for, in milliseconds; the command line may write while we serve. */
const LOOK_MS = 1000

/** The newsroom of one connection, and what its driver has to say of transactions. */
export interface SqliteNewsroom extends Newsroom, Ending {}

/** News of this process as they are, and of other processes only that there are some: SQLite does not say what. */
export function sqliteNewsroom(database: Database): SqliteNewsroom {
  const heard = new EventEmitter().setMaxListeners(0)
  /** Of the transaction under way, and of those that are done but not yet on disk. */
  let [underWay, done]: [string[], string[]] = [[], []]
  const tell = (told: readonly string[]): void => {
    for (const text of told) heard.emit('news', readNews(text))
  }
  database.function('pg_notify', { directOnly: true }, (_channel: unknown, text: unknown) => {
    if (database.inTransaction) underWay.push(String(text))
    else tell([String(text)])
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
    done() {
      done.push(...underWay)
      underWay = []
    },
    undone: () => { underWay = [] },
    committed() {
      const told = done
      done = []
      tell(told)
    },
    lost: () => { done = [] },
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
