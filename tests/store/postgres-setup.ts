import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { openStore } from '../../src/store/index.js'
import { startPostgres } from './postgres-server.js'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the server's own database; every test world gets one copied from the template. */
    postgres: string
  }
}

/** Name of the database with all tables and no rows. */
export const TEMPLATE = 'frondline_template'

/** Starts one PostgreSQL server for a whole run of the tests, and makes the tables once. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startPostgres({ flushes: false })
  const client = new pg.Client({ connectionString: server.url('postgres') })
  await client.connect()
  await client.query(`create database ${TEMPLATE}`)
  await client.end()
  await (await openStore({ home: '', databaseUrl: server.url(TEMPLATE) })).close()
  project.provide('postgres', server.url('postgres'))
  return () => server.stop()
}
