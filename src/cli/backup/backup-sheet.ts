import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { dirname } from 'node:path'
import { z } from 'zod'

/** What a backup says of itself; written last, so that a backup without it is not whole. */
export const BackupSheet = z.object({
  form: z.literal(1),
  madeAt: z.string(),
  /** SHA-256 of every file, hex, by its path in the backup. */
  files: z.record(z.string(), z.string()),
})
export type BackupSheet = z.infer<typeof BackupSheet>

export const SHEET = 'backup.json'
export const PHOTOS = 'photos'

/** Every folder that these paths of a backup lie in, the backup itself as '.' among them. */
export function foldersOf(paths: readonly string[]): ReadonlySet<string> {
  const folders = new Set(['.'])
  for (const path of paths) {
    for (let folder = dirname(path); folder !== '.'; folder = dirname(folder)) folders.add(folder)
  }
  return folders
}

/** SHA-256 of a file, hex. */
export async function hashOfFile(path: string): Promise<string> {
  const hash = createHash('sha256')
  for await (const bytes of createReadStream(path)) hash.update(bytes as Buffer)
  return hash.digest('hex')
}
