import { randomUUID } from 'node:crypto'
import { mkdir, open, opendir, readFile, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { isContentHash } from './content-hash.js'
import { flush } from './flush.js'
import type { KeptPicture, PhotoHome } from './photo-home.js'

/**
 * Pictures in a folder, two levels deep: ab/abcd….jpg. A picture is written under a temporary name, flushed to the disk
 * and renamed, so that a loss of power leaves the whole picture or none.
 */
export function folderHome(folder: string): PhotoHome {
  const fileOf = (hash: string): string => {
    if (!isContentHash(hash)) throw new Error(`"${hash}" is not a content hash.`)
    return join(folder, hash.slice(0, 2), `${hash}.jpg`)
  }
  const putAt = async (hash: string): Promise<string | null> => {
    const found = await orNothing(stat(fileOf(hash)))
    return found === null ? null : found.mtime.toISOString()
  }
  return {
    name: 'a folder',
    put: (hash, bytes) => writeWhole(fileOf(hash), bytes),
    get: (hash) => orNothing(readFile(fileOf(hash))),
    has: async (hash) => await putAt(hash) !== null,
    putAt,
    remove: (hash) => rm(fileOf(hash), { force: true }),
    list: () => picturesIn(folder, putAt),
  }
}

/** Removes what a `put` left behind that was interrupted before this time; later ones may still be under way. */
export async function sweepUnfinished(folder: string, before: Date): Promise<void> {
  for await (const path of filesIn(folder)) {
    if (!path.endsWith(UNFINISHED)) continue
    const found = await orNothing(stat(path))
    if (found !== null && found.mtime < before) await rm(path, { force: true })
  }
}

const UNFINISHED = '.unfinished'

async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const unfinished = `${file}.${randomUUID()}${UNFINISHED}`
  const made = await mkdir(dirname(file), { recursive: true, mode: 0o700 })
  try {
    const handle = await open(unfinished, 'wx', 0o600)
    try {
      await handle.writeFile(bytes)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await rename(unfinished, file)
  } catch (fault) {
    await rm(unfinished, { force: true })
    throw fault
  }
  // The name is in the folder, and a folder that is new is in the one above: both are flushed as well.
  await flush(dirname(file))
  if (made !== undefined) await flush(dirname(dirname(file)))
}

async function* picturesIn(folder: string, putAt: (hash: string) => Promise<string | null>): AsyncGenerator<KeptPicture> {
  for await (const path of filesIn(folder)) {
    const hash = /([0-9a-f]{64})\.jpg$/.exec(path)?.[1]
    const at = hash === undefined ? null : await putAt(hash)
    if (hash !== undefined && at !== null) yield { hash, putAt: at }
  }
}

async function* filesIn(folder: string): AsyncGenerator<string> {
  const entries = await orNothing(opendir(folder))
  if (entries === null) return
  for await (const entry of entries) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) yield* filesIn(path)
    else yield path
  }
}

async function orNothing<Value>(reading: Promise<Value>): Promise<Value | null> {
  try {
    return await reading
  } catch (fault) {
    if (fault instanceof Error && 'code' in fault && fault.code === 'ENOENT') return null
    throw fault
  }
}
