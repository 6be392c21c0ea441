import { readdir, readFile } from 'node:fs/promises'
import { join, relative, sep } from 'node:path'
import type { SourceFile } from './source-file.js'

/**
 * Every .yaml or .yml file below a folder, sorted by path.
 * @throws the file system's own error when the folder cannot be read
 */
export async function readFolder(folder: string): Promise<SourceFile[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const paths = entries
    .filter((entry) => entry.isFile() && /\.ya?ml$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
  const shownFrom = relative(process.cwd(), folder).startsWith('..') ? folder : relative(process.cwd(), folder) || '.'
  return Promise.all(paths.map(async (path) => ({
    path: join(shownFrom, relative(folder, path)).split(sep).join('/'),
    text: await readFile(path, 'utf8'),
  })))
}
