import { createHash, randomBytes } from 'node:crypto'
import { link, mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { KEY_BYTES, keyRing, type KeyRing, type NamedKey } from '../desk/index.js'
import { flush } from '../photos/index.js'
import { keyFromText } from './key-text.js'
import type { Settings } from './settings.js'

/** The file of the key that is made where none is set, in the folder of the store. */
export const KEY_FILE = 'contact.key'

/**
 * The keys that seal contact details. From the settings; where none are set, from a file beside the store that is made at
 * the first start, which production does not take: a key that lies beside what it seals protects only a copy of the store.
 */
export async function contactKeys({ contactKeys: set, home, production }: Pick<Settings, 'contactKeys' | 'home' | 'production'>): Promise<KeyRing> {
  const [first, ...older] = set
  if (first !== undefined) return ringOf([first, ...older])
  if (production) {
    throw new Error('FRONDLINE_CONTACT_KEY is not set. Contact details are encrypted with it; make one with "openssl rand -base64 32", keep a copy in a safe place, and set it.')
  }
  const file = join(home, KEY_FILE)
  await mkdir(home, { recursive: true, mode: 0o700 })
  await makeOnce(file, `${randomBytes(KEY_BYTES).toString('base64')}\n`)
  return ringOf([await keyOfFile(file)])
}

/**
 * The keys that the service uses already, for a command beside it: none is made.
 * @throws when there is none, since whatever is sealed could not be opened with another
 */
export async function keysInUse({ contactKeys: set, home }: Pick<Settings, 'contactKeys' | 'home'>): Promise<KeyRing> {
  const [first, ...older] = set
  if (first !== undefined) return ringOf([first, ...older])
  const file = join(home, KEY_FILE)
  if (!await isThere(file)) {
    throw new Error(`There is no key to contact details: FRONDLINE_CONTACT_KEY is not set, and ${file} is not there. Run this with the settings of the service.`)
  }
  return ringOf([await keyOfFile(file)])
}

async function keyOfFile(file: string): Promise<Uint8Array> {
  const key = keyFromText((await readFile(file, 'utf8')).trim())
  if (key === null) throw new Error(`${file} does not hold a key of ${KEY_BYTES} bytes in base64.`)
  return key
}

/**
 * Of several who start at once, one makes the file, whole; the others find it. It is on the disk before anything is sealed
 * with the key: the store outlasts a loss of power, and would be worth nothing without it.
 */
async function makeOnce(file: string, content: string): Promise<void> {
  if (await isThere(file)) return
  const draft = `${file}.${randomBytes(6).toString('hex')}`
  try {
    await writeFile(draft, content, { flag: 'wx', mode: 0o600 })
    await flush(draft)
    await link(draft, file)
    await flush(dirname(file))
  } catch (fault) {
    if (!(fault instanceof Error && 'code' in fault && fault.code === 'EEXIST')) throw fault
  } finally {
    await rm(draft, { force: true })
  }
}

function isThere(file: string): Promise<boolean> {
  return stat(file).then(() => true, () => false)
}

function ringOf([first, ...older]: readonly [Uint8Array, ...Uint8Array[]]): KeyRing {
  return keyRing([named(first), ...older.map(named)], randomBytes)
}

/** A key is named by its own digest, so that nobody has to invent names and a changed key is noticed. */
function named(bytes: Uint8Array): NamedKey {
  return { id: createHash('sha256').update(bytes).digest('hex').slice(0, 8), bytes }
}
