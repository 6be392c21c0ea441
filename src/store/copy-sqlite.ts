import { existsSync } from 'node:fs'
import Database from 'better-sqlite3'

/**
 * Copies a SQLite store into a new file while others go on reading and writing: what was confirmed before is in the
 * copy, and it is whole. Throws when there is no store, or when the copy does not stand up to being checked.
 */
export async function copySqlite(from: string, to: string): Promise<void> {
  if (!existsSync(from)) throw new Error(`There is no store at ${from}.`)
  const source = new Database(from, { readonly: true, fileMustExist: true })
  try {
    // In one step: in several, every write of the service in between would make it begin anew.
    await source.backup(to, { progress: () => 0x7fffffff })
  } finally {
    source.close()
  }
  const copy = new Database(to)
  try {
    // One file, with no log beside it that could be forgotten.
    copy.pragma('journal_mode = DELETE')
    const said = copy.pragma('integrity_check', { simple: true })
    if (said !== 'ok') throw new Error(`The copy of the store is damaged: ${String(said)}`)
  } finally {
    copy.close()
  }
}

/** The content hashes of all pictures that a SQLite store names and that are not removed. */
export function picturesNamedIn(file: string): string[] {
  const store = new Database(file, { readonly: true, fileMustExist: true })
  try {
    const hasPhotos = store.prepare('select 1 from sqlite_master where type = ? and name = ?').get('table', 'photo')
    if (hasPhotos === undefined) return []
    return store.prepare('select large_hash from photo where removed_at is null union select small_hash from photo where removed_at is null')
      .pluck().all().map(String)
  } finally {
    store.close()
  }
}
