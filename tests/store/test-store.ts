import { basename } from 'node:path'
import pg from 'pg'
import { inject } from 'vitest'
import type { StoreSettings } from '../../src/store/index.js'
import { TEMPLATE } from './postgres-setup.js'

/** Which store this run of the tests is about. */
export function storeUnderTest(): 'SQLite' | 'PostgreSQL' {
  return serverUrl() === undefined ? 'SQLite' : 'PostgreSQL'
}

/**
 * Where the store of this home is, in the database that this run is about. One home has one database: opening it again
 * finds what was written.
 */
export async function testStore(home: string): Promise<StoreSettings> {
  const server = serverUrl()
  if (server === undefined) return { home }
  const name = databaseOf(home)
  const made = await onServer(server, async (client) => {
    const { rows } = await client.query('select 1 from pg_database where datname = $1', [name])
    if (rows.length === 0) await client.query(`create database "${name}" template ${TEMPLATE}`)
    return name
  })
  return { home, databaseUrl: databaseUrl(server, made), connections: 5 }
}

/** Drops the database of this home, when it has one. */
export async function dropTestStore(home: string): Promise<void> {
  const server = serverUrl()
  if (server === undefined) return
  await onServer(server, (client) => client.query(`drop database if exists "${databaseOf(home)}" with (force)`))
}

function serverUrl(): string | undefined {
  // Undefined in the project for SQLite, whatever its type says.
  return inject('postgres') as string | undefined
}

const databaseOf = (home: string): string => basename(home)

function databaseUrl(server: string, name: string): string {
  const url = new URL(server)
  url.pathname = `/${name}`
  return url.href
}

/** The one connection of this worker to the server itself: making one took a quarter as long as copying a database. */
let connected: Promise<pg.Client> | null = null

async function onServer<Result>(server: string, work: (client: pg.Client) => Promise<Result>): Promise<Result> {
  connected ??= connect(server)
  return work(await connected)
}

async function connect(server: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: server })
  // The server ends when the run does, maybe before this worker.
  client.on('error', () => { connected = null })
  await client.connect()
  return client
}
