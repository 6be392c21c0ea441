import { existsSync } from 'node:fs'
import { copyFile, mkdir, rename, rm, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { flush } from '../../photos/index.js'
import { copySqlite, picturesNamedIn, STORE_FILE } from '../../store/index.js'
import { type BackupSheet, foldersOf, hashOfFile, PHOTOS, SHEET } from './backup-sheet.js'

/** What is copied, and to where. */
export interface BackupPlan {
  /** Folder of the store. */
  readonly home: string
  /** The folder to make. */
  readonly target: string
  /** Name of the file of the key in the home. */
  readonly keyFile: string
  /** Whether the pictures lie in the home; else they are somewhere that is copied by its own means. */
  readonly picturesInHome: boolean
}

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
export async function makeBackup(plan: BackupPlan, now: Date): Promise<MadeBackup> {
  const { target } = plan
  if (existsSync(target)) throw new Error(`${target} is there already. Name a folder that is not.`)
  const unfinished = `${target}.unfinished`
  await rm(unfinished, { recursive: true, force: true })
  try {
    const made = await fill(plan, unfinished, now)
    await rename(unfinished, target)
    await flush(dirname(target))
    return made
  } catch (fault) {
    await rm(unfinished, { recursive: true, force: true })
    throw fault
  }
}

async function fill({ home, keyFile, picturesInHome }: BackupPlan, unfinished: string, now: Date): Promise<MadeBackup> {
  await mkdir(unfinished, { recursive: true, mode: 0o700 })
  const files: Record<string, string> = {}
  const keep = async (path: string): Promise<void> => {
    await flush(join(unfinished, path))
    files[path] = await hashOfFile(join(unfinished, path))
  }

  await copySqlite(join(home, STORE_FILE), join(unfinished, STORE_FILE))
  await keep(STORE_FILE)
  const missing: string[] = []
  for (const hash of picturesInHome ? picturesNamedIn(join(unfinished, STORE_FILE)) : []) {
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
  for (const folder of foldersOf(Object.keys(files))) await flush(join(unfinished, folder))
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
