import { join } from 'node:path'
import { Command } from 'commander'
import { KEY_FILE, readSettings, type Settings } from '../../http/index.js'
import { makeBackup } from '../backup/make-backup.js'
import { restoreBackup } from '../backup/restore-backup.js'
import { plainly } from '../plainly.js'
import { notice, print } from '../terminal.js'

/** `frondline backup`: a copy of everything, made while the service runs. */
export function backupCommand(): Command {
  return new Command('backup')
    .description('Copy the store and its photos into a new folder, while the service runs. With PostgreSQL, use pg_dump; photos in a bucket are copied there.')
    .argument('<folder>', 'the folder to make; it must not be there yet')
    .option('--home <dir>', 'folder of the store (FRONDLINE_HOME)')
    .action((folder: string, { home: given }: { home?: string }) => plainly(async () => {
      const { home, photoBucket } = settingsWithSqlite(given, dumpInstead(folder))
      const plan = { home, target: folder, keyFile: KEY_FILE, picturesInHome: photoBucket === null }
      const { photos, missing, hasKey } = await makeBackup(plan, new Date())
      const pictures = photoBucket === null ? ` and ${photos} ${photos === 1 ? 'picture' : 'pictures'}` : ''
      print(`Backed up to ${folder}: the store${pictures}. Everything in it was read again and checked.`)
      if (photoBucket !== null) print(`The pictures are not in it: they are in the bucket ${photoBucket.bucket} and must be copied there, after this.`)
      if (hasKey) print('The key to contact details is in it too: keep it locked away.')
      else print('The key to contact details (FRONDLINE_CONTACT_KEY) is not in it: keep that in another place.')
      for (const hash of missing) notice(`The store names the picture ${hash}, which is missing or damaged.`)
      if (missing.length > 0) process.exitCode = 1
    }))
}

/** `frondline restore`: a backup as a home of its own. */
export function restoreCommand(): Command {
  return new Command('restore')
    .description('Put a backup into a folder that has no store yet. With PostgreSQL, use pg_restore into a new database.')
    .argument('<folder>', 'the backup')
    .option('--home <dir>', 'folder to restore to (FRONDLINE_HOME)')
    .action((folder: string, { home: given }: { home?: string }) => plainly(async () => {
      const { home } = settingsWithSqlite(given, restoreInstead(folder))
      const { madeAt } = await restoreBackup(folder, home)
      print(`Restored to ${home}, as it was on ${madeAt}. Start the service with FRONDLINE_HOME=${home}.`)
    }))
}

function settingsWithSqlite(home: string | undefined, instead: readonly string[]): Settings {
  const settings = readSettings({ ...process.env, ...(home === undefined ? {} : { FRONDLINE_HOME: home }) })
  if (settings.databaseUrl === null) return settings
  throw new Error([
    'DATABASE_URL is set, so the store is in PostgreSQL, whose own tools do this:',
    ...instead,
    'deploy/README.md has the whole of it.',
  ].join('\n'))
}

const dumpInstead = (folder: string): string[] => [
  `  pg_dump --format=custom --file ${join(folder, 'frondline.dump')} "$DATABASE_URL"`,
  'It may run beside the service. Pictures are copied apart, after the dump: those in a folder with rsync, those in a bucket there.',
]

// Never into the database that is in use: the service would write into tables that are being dropped and filled.
const restoreInstead = (folder: string): string[] => [
  '  createdb frondline_restored',
  `  pg_restore --exit-on-error --no-owner --dbname frondline_restored ${join(folder, 'frondline.dump')}`,
  'It goes into a new, empty database, never into the one that is in use. Then start the service with DATABASE_URL naming the new one.',
]
