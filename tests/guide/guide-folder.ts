/** A guide in a real temporary folder, for tests that read, watch or run on files. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import type { SourceFile } from '../../src/guide/index.js'

/** Writes files below a new temporary folder and gives the path of its trees folder, with a way to clear it away. */
export async function makeGuideFolder(files: readonly SourceFile[]): Promise<{ trees: string; write(path: string, text: string): Promise<void>; clear(): Promise<void> }> {
  const root = await mkdtemp(join(tmpdir(), 'frondline-guide-'))
  const trees = join(root, 'trees')
  const write = async (path: string, text: string): Promise<void> => {
    await mkdir(dirname(join(trees, path)), { recursive: true })
    await writeFile(join(trees, path), text)
  }
  for (const { path, text } of files) await write(path.replace(/^trees\//, ''), text)
  return { trees, write, clear: () => rm(root, { recursive: true, force: true }) }
}
