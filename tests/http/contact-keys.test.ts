import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { contactKeys, KEY_FILE, keysInUse } from '../../src/http/contact-keys.js'

let home: string
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-keys-'))
})
afterEach(() => rm(home, { recursive: true, force: true }))

const key = (fill: number) => Buffer.alloc(32, fill)

describe('the keys for contact details', () => {
  it('are made once in the store\'s folder where none is set, for its owner alone', async () => {
    const settings = { contactKeys: [], home: join(home, 'new'), production: false }
    const [one, two] = await Promise.all([contactKeys(settings), contactKeys(settings)])
    expect(two.open('x', one.seal('x', 'secret'))).toBe('secret')
    expect((await contactKeys(settings)).open('x', one.seal('x', 'secret'))).toBe('secret')
    const file = join(home, 'new', KEY_FILE)
    expect((await stat(file)).mode & 0o777).toBe(0o600)
    expect(Buffer.from(await readFile(file, 'utf8'), 'base64')).toHaveLength(32)
  })

  it('must be set in production, and no file is made there', async () => {
    await expect(contactKeys({ contactKeys: [], home, production: true })).rejects.toThrow('FRONDLINE_CONTACT_KEY is not set.')
    await expect(stat(join(home, KEY_FILE))).rejects.toThrow()
  })

  it('come from the settings when set: the first seals, the others open', async () => {
    const old = await contactKeys({ contactKeys: [key(1)], home, production: true })
    const both = await contactKeys({ contactKeys: [key(2), key(1)], home, production: true })
    expect(both.open('x', old.seal('x', 'secret'))).toBe('secret')
    expect(both.current).not.toBe(old.current)
    expect(() => old.open('x', both.seal('x', 'secret'))).toThrow(/not among the keys/)
  })

  it('are those in use for a command beside the service, which makes none', async () => {
    const settings = { contactKeys: [], home, production: false }
    await expect(keysInUse(settings)).rejects.toThrow('There is no key to contact details: FRONDLINE_CONTACT_KEY is not set')
    await expect(stat(join(home, KEY_FILE))).rejects.toThrow()
    const made = await contactKeys(settings)
    expect((await keysInUse(settings)).open('x', made.seal('x', 'secret'))).toBe('secret')
    expect((await keysInUse({ ...settings, contactKeys: [key(1)] })).current).not.toBe(made.current)
  })

  it('are refused when the file holds something else', async () => {
    await writeFile(join(home, KEY_FILE), 'short')
    await expect(contactKeys({ contactKeys: [], home, production: false })).rejects.toThrow('does not hold a key of 32 bytes')
  })
})
