import { existsSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { STORE_FILE, type StoreSettings } from './open-store.js'
import { connectionConfig } from './postgres.js'

/**
 * Whether a service has made its store there already; looks, and makes nothing. A PostgreSQL database without our tables
 * is not one. Throws when the server cannot be reached.
 */
export async function hasStore({ home, databaseUrl }: Pick<StoreSettings, 'home' | 'databaseUrl'>): Promise<boolean> {
  if (databaseUrl == null) return existsSync(join(home, STORE_FILE))
  const client = new pg.Client(connectionConfig(databaseUrl))
  await client.connect()
  try {
    const { rows } = await client.query<{ has: boolean }>('select to_regclass(\'case_file\') is not null as has')
    return rows[0]?.has === true
  } finally {
    await client.end()
  }
}
