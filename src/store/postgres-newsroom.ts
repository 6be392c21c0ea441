import { EventEmitter } from 'node:events'
import pg from 'pg'
import { ANYTHING, CHANNEL, type News, type Newsroom, readNews } from './news.js'
import { connectionConfig } from './postgres.js'

const FIRST_WAIT_MS = 250
const LONGEST_WAIT_MS = 10_000

/**
 * News of every process on one PostgreSQL database, on a connection of its own from the first listener on. After the
 * connection was lost, anything may have changed meanwhile, and that is told.
 */
export function postgresNewsroom(url: string, onLost: (fault: Error) => void): Newsroom {
  const heard = new EventEmitter().setMaxListeners(0)
  let client: pg.Client | null = null
  let retry: NodeJS.Timeout | null = null
  let isOpen = false
  let isClosed = false

  const connect = async (wait: number): Promise<void> => {
    const fresh = new pg.Client(connectionConfig(url))
    client = fresh
    let isLost = false
    const lost = (fault: Error): void => {
      if (isLost || isClosed) return
      isLost = true
      onLost(fault)
      fresh.end().catch(() => undefined)
      retry = setTimeout(() => void connect(Math.min(wait * 2, LONGEST_WAIT_MS)), wait).unref()
    }
    fresh.on('error', lost)
    fresh.on('end', () => { lost(new Error('the connection for news ended')) })
    fresh.on('notification', ({ payload }) => {
      wait = FIRST_WAIT_MS
      heard.emit('news', readNews(payload ?? ''))
    })
    try {
      await fresh.connect()
      await fresh.query(`listen ${CHANNEL}`)
      heard.emit('news', ANYTHING)
    } catch (fault) {
      lost(fault instanceof Error ? fault : new Error(String(fault)))
    }
  }

  return {
    listen(hear: (news: News) => void) {
      heard.on('news', hear)
      if (!isOpen) {
        isOpen = true
        void connect(FIRST_WAIT_MS)
      }
      return () => { heard.off('news', hear) }
    },
    async close() {
      isClosed = true
      if (retry !== null) clearTimeout(retry)
      heard.removeAllListeners()
      await client?.end().catch(() => undefined)
    },
  }
}
