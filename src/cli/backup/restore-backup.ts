import { existsSync } from 'node:fs'
import { chmod, copyFile, mkdir, readFile, rename } from 'node:fs/promises'
import { dirname, join, normalize } from 'node:path'
import { flush } from '../../photos/index.js'
import { STORE_FILE } from '../../store/index.js'
import { BackupSheet, foldersOf, hashOfFile, SHEET } from './backup-sheet.js'

/**
 * Puts a backup into a home that has no store. Everything is checked before anything is written; the store is put in
 * its place last, so that a home never has a store without its photos, and all of it is on the disk at the end.
 * @throws naming what is not as it was when the backup was made
 */
export async function restoreBackup(from: string, home: string): Promise<BackupSheet> {
  const store = join(home, STORE_FILE)
  if (existsSync(store)) {
    throw new Error(`${home} has a store already, which is not written over. Move it away, or choose another folder with --home.`)
  }
  const sheet = await readSheet(from)
  const paths = Object.keys(sheet.files)
  const changed: string[] = []
  for (const path of paths) if (!await isAsItWas(from, path, sheet)) changed.push(path)
  if (changed.length > 0) {
    throw new Error(`The backup is not as it was made; nothing was restored. Changed or missing: ${changed.slice(0, 5).join(', ')}.`)
  }
  for (const path of paths.filter((one) => one !== STORE_FILE)) await copyInto(home, from, path, path)
  await copyInto(home, from, STORE_FILE, `${STORE_FILE}.unfinished`)
  for (const folder of foldersOf(paths)) await flush(join(home, folder))
  await rename(`${store}.unfinished`, store)
  await flush(home)
  await flush(dirname(home))
  return sheet
}

async function readSheet(from: string): Promise<BackupSheet> {
  const path = join(from, SHEET)
  if (!existsSync(path)) throw new Error(`${from} is no whole backup: it has no ${SHEET}.`)
  const read = BackupSheet.safeParse(JSON.parse(await readFile(path, 'utf8')))
  if (!read.success) throw new Error(`${path} cannot be read; it may be from a later version of Frondline.`)
  if (read.data.files[STORE_FILE] === undefined) throw new Error(`${path} names no store.`)
  // A sheet that was tampered with must not make us write elsewhere.
  const astray = Object.keys(read.data.files).find((name) => name !== normalize(name) || name.startsWith('..') || name.startsWith('/'))
  if (astray !== undefined) throw new Error(`${path} names "${astray}", which is not in the backup.`)
  return read.data
}

async function isAsItWas(from: string, path: string, { files }: BackupSheet): Promise<boolean> {
  const file = join(from, path)
  return existsSync(file) && await hashOfFile(file) === files[path]
}

async function copyInto(home: string, from: string, path: string, as: string): Promise<void> {
  const to = join(home, as)
  await mkdir(dirname(to), { recursive: true, mode: 0o700 })
  await copyFile(join(from, path), to)
  await chmod(to, 0o600)
  await flush(to)
}
