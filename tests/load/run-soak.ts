/** `npm run soak [-- KILLS [sqlite|postgresql]]`: kills the service again and again and says what was lost: nothing. */
import pg from 'pg'
import { startPostgres } from '../store/postgres-server.js'
import { soak } from './soak.js'

const [kills = '200', only] = process.argv.slice(2)
const say = (line: string): void => { process.stderr.write(`${line}\n`) }

async function onSqlite(): Promise<void> {
  report('SQLite', await soak({ kills: Number(kills), databaseUrl: null, askers: 4, say }))
}

async function onPostgres(): Promise<void> {
  const server = await startPostgres({ flushes: true })
  try {
    const client = new pg.Client({ connectionString: server.url('postgres') })
    await client.connect()
    await client.query('create database soak')
    await client.end()
    report('PostgreSQL', await soak({ kills: Number(kills), databaseUrl: server.url('soak'), askers: 4, say }))
  } finally {
    await server.stop()
  }
}

function report(store: string, findings: Awaited<ReturnType<typeof soak>>): void {
  process.stdout.write(`${JSON.stringify({ store, ...findings })}\n`)
  if (findings.lost.length + findings.doubled.length > 0) process.exitCode = 1
}

if (only !== 'postgresql') await onSqlite()
if (only !== 'sqlite') await onPostgres()
