import { join } from 'node:path'
import { Command } from 'commander'
import { KEY_FILE, readSettings } from '../../http/index.js'
import { makeBackup } from '../backup/make-backup.js'
import { restoreBackup } from '../backup/restore-backup.js'
import { notice, print } from '../terminal.js'

/** `frondline backup`: a copy of everything, made while the service runs. */
export function backupCommand(): Command {
  return new Command('backup')
    .description('Copy the store and its photos into a new folder, while the service runs. With PostgreSQL, use pg_dump.')
    .argument('<folder>', 'the folder to make; it must not be there yet')
    .option('--home <dir>', 'folder of the store (FRONDLINE_HOME)')
    .action((folder: string, { home }: { home?: string }) => plainly(async () => {
      const { photos, missing, hasKey } = await makeBackup(homeOf(home, dumpInstead(folder)), folder, KEY_FILE, new Date())
      print(`Backed up to ${folder}: the store and ${photos} ${photos === 1 ? 'picture' : 'pictures'}. Everything in it was read again and checked.`)
      if (hasKey) print('The key to contact details is in it too: keep it locked away.')
      else print('The key to contact details (FRONDLINE_CONTACT_KEY) is not in it: keep that in another place.')
      for (const hash of missing) notice(`The store names the picture ${hash}, which is missing or damaged.`)
      if (missing.length > 0) process.exitCode = 1
    }))
}

/** `frondline restore`: a backup as a home of its own. */
export function restoreCommand(): Command {
  return new Command('restore')
    .description('Put a backup into a folder that has no store yet. With PostgreSQL, use pg_restore.')
    .argument('<folder>', 'the backup')
    .option('--home <dir>', 'folder to restore to (FRONDLINE_HOME)')
    .action((folder: string, { home }: { home?: string }) => plainly(async () => {
      const to = homeOf(home, `pg_restore --clean --if-exists --no-owner --dbname "$DATABASE_URL" ${join(folder, 'frondline.dump')}`)
      const { madeAt } = await restoreBackup(folder, to)
      print(`Restored to ${to}, as it was on ${madeAt}. Start the service with FRONDLINE_HOME=${to}.`)
    }))
}

function homeOf(given: string | undefined, instead: string): string {
  const { home, databaseUrl } = readSettings({ ...process.env, ...(given === undefined ? {} : { FRONDLINE_HOME: given }) })
  if (databaseUrl === null) return home
  throw new Error([
    'DATABASE_URL is set, so the store is in PostgreSQL, whose own tools do this, also while the service runs:',
    `  ${instead}`,
    'Photos in a folder are copied apart, after the dump. deploy/README.md has the whole of it.',
  ].join('\n'))
}

const dumpInstead = (folder: string): string => (
  `pg_dump --format=custom --file ${join(folder, 'frondline.dump')} "$DATABASE_URL"`)

async function plainly(work: () => Promise<void>): Promise<void> {
  try {
    await work()
  } catch (fault) {
    notice(fault instanceof Error ? fault.message : String(fault))
    process.exitCode = 1
  }
}
