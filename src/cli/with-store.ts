import { readSettings, type Settings } from '../http/index.js'
import { hasStore, openStore, type Store } from '../store/index.js'
import { plainly } from './plainly.js'

/**
 * Does a command's work on the store that the settings name, while a service may be running on it, and closes it again.
 * Only `serve` makes a store: a command in the wrong folder would work on an empty one of its own and seem to succeed.
 * Faults are said in plain words and end the command with 1.
 */
export function withStore(work: (store: Store, settings: Settings) => Promise<void>): Promise<void> {
  return plainly(async () => {
    const settings = readSettings(process.env)
    const { home, databaseUrl } = settings
    if (!await hasStore({ home, databaseUrl })) throw new Error(whatIsMissing(settings))
    const store = await openStore({ home, databaseUrl })
    try {
      await work(store, settings)
    } finally {
      await store.close()
    }
  })
}

function whatIsMissing({ home, databaseUrl }: Settings): string {
  // The address of a database is not repeated: it holds a password.
  const where = databaseUrl === null ? `in the folder "${home}"` : 'in the database of DATABASE_URL'
  const instead = databaseUrl === null ? 'set FRONDLINE_HOME to the folder of the service' : 'check the name of the database'
  return `There is no store ${where}, and nothing was made. Run this with the settings of the service (${instead}), or start the service first: frondline serve makes its store.`
}
