import { createHash } from 'node:crypto'
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { deserialize, serialize } from 'node:v8'
import { compileGuide, type Compiled } from './compile.js'
import type { Guide } from './guide.js'
import { readFolder } from './read-folder.js'
import type { SourceFile } from './source-file.js'

/** Where compiled guides are kept from one start to the next. */
export interface GuideKeeping {
  /** Folder for them; made when it is not there. Whoever can write into it decides what the program reads: never a shared one. */
  readonly folder: string
  /** What tells one build of the program from another, such as a hash of it: what another build kept is not read. */
  readonly program: string
  /** What this process has read or compiled, by key: it is then the same guide again, with all that was built from it. Left out, none is. */
  readonly atHand?: Map<string, Guide>
}

/** So many are kept, those used last: one for each guide that somebody works with. */
const MOST_KEPT = 4

/**
 * Reads the guide in a folder and compiles it, unless it was compiled before and not a letter of it has changed since: then
 * it is read as it was kept. Warnings are left out, since they are the proof's; errors are never kept.
 * A folder for keeping that cannot be read or written costs time and nothing else.
 * @param today ISO date, for the age of reviews
 * @param keeping null to compile every time
 * @throws the file system's own error when the guide's folder cannot be read
 */
export async function loadSoundGuide(folder: string, today: string, keeping: GuideKeeping | null): Promise<Pick<Compiled, 'guide' | 'errors'>> {
  const files = await readFolder(folder)
  const key = keeping === null ? '' : keyOf(files, keeping.program)
  const place = keeping === null ? null : join(keeping.folder, key)
  const kept = keeping?.atHand?.get(key) ?? (place === null ? null : await readKept(place))
  const { guide, errors } = kept === null ? compileGuide(files, { today }) : { guide: kept, errors: [] }
  if (guide !== null) keeping?.atHand?.set(key, guide)
  if (keeping !== null && place !== null && kept === null && guide !== null) await keep(guide, keeping.folder, place)
  return { guide, errors }
}

function keyOf(files: readonly SourceFile[], program: string): string {
  const hash = createHash('sha256').update(`${process.version}\0${program}`)
  for (const { path, text } of files) hash.update(`\0${path}\0${text.length}\0${text}`)
  return hash.digest('hex')
}

async function readKept(place: string): Promise<Guide | null> {
  try {
    // The key holds the program and every letter of the files, so what lies there is a Guide of this very program.
    const guide = deserialize(await readFile(place)) as Guide
    await utimes(place, new Date(), new Date())
    return guide
  } catch {
    // Not there, cut short, or no longer ours to read: it is compiled anew.
    return null
  }
}

async function keep(guide: Guide, folder: string, place: string): Promise<void> {
  const whole = `${place}.${process.pid}`
  try {
    await mkdir(folder, { recursive: true })
    // Written whole and then renamed, so that a program started at the same time never reads half a guide.
    await writeFile(whole, serialize(guide), { mode: 0o600 })
    await rename(whole, place)
    await forgetOldest(folder)
  } catch {
    await rm(whole, { force: true }).catch(() => undefined)
  }
}

async function forgetOldest(folder: string): Promise<void> {
  const names = await readdir(folder)
  const used = await Promise.all(names.map(async (name) => ({ name, at: (await stat(join(folder, name))).mtimeMs })))
  used.sort((one, other) => other.at - one.at)
  for (const { name } of used.slice(MOST_KEPT)) await rm(join(folder, name), { force: true })
}
