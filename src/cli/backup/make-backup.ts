import { existsSync } from 'node:fs'
import { copyFile, mkdir, open, rename, rm, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { copySqlite, picturesNamedIn, STORE_FILE } from '../../store/index.js'
import { type BackupSheet, hashOfFile, PHOTOS, SHEET } from './backup-sheet.js'

/** What a backup came to. */
export interface MadeBackup {
  readonly photos: number
  /** Pictures that the store names and that are not in the folder, or not what their name says. */
  readonly missing: readonly string[]
  readonly hasKey: boolean
}

/**
 * Copies the store of a home and its photos into a new folder, while the service runs. The store goes first: a photo is in
 * its folder before the store names it, so every photo named in the copy is there to be copied. The folder gets its
 * name only once it is whole.
 */
export async function makeBackup(home: string, target: string, keyFile: string, now: Date): Promise<MadeBackup> {
  if (existsSync(target)) throw new Error(`${target} is there already. Name a folder that is not.`)
  const unfinished = `${target}.unfinished`
  await rm(unfinished, { recursive: true, force: true })
  try {
    const made = await fill(home, unfinished, keyFile, now)
    await rename(unfinished, target)
    return made
  } catch (fault) {
    await rm(unfinished, { recursive: true, force: true })
    throw fault
  }
}

async function fill(home: string, unfinished: string, keyFile: string, now: Date): Promise<MadeBackup> {
  await mkdir(unfinished, { recursive: true, mode: 0o700 })
  const files: Record<string, string> = {}
  const keep = async (path: string): Promise<void> => {
    await flush(join(unfinished, path))
    files[path] = await hashOfFile(join(unfinished, path))
  }

  await copySqlite(join(home, STORE_FILE), join(unfinished, STORE_FILE))
  await keep(STORE_FILE)
  const missing: string[] = []
  for (const hash of picturesNamedIn(join(unfinished, STORE_FILE))) {
    const path = join(PHOTOS, hash.slice(0, 2), `${hash}.jpg`)
    if (await copyWhole(join(home, path), join(unfinished, path), hash)) await keep(path)
    else missing.push(hash)
  }
  const photos = Object.keys(files).length - 1
  const hasKey = existsSync(join(home, keyFile))
  if (hasKey) {
    await copyFile(join(home, keyFile), join(unfinished, keyFile))
    await keep(keyFile)
  }
  const sheet: BackupSheet = { form: 1, madeAt: now.toISOString(), files }
  await writeFile(join(unfinished, SHEET), JSON.stringify(sheet, null, 2))
  await flush(join(unfinished, SHEET))
  return { photos, missing, hasKey }
}

/** False when there is no such picture or its bytes are not those of its name. */
async function copyWhole(from: string, to: string, hash: string): Promise<boolean> {
  if (!existsSync(from)) return false
  await mkdir(dirname(to), { recursive: true, mode: 0o700 })
  await copyFile(from, to)
  if (await hashOfFile(to) === hash) return true
  await rm(to)
  return false
}

async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
