import { cp, mkdtemp, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { deserialize, serialize } from 'node:v8'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Guide, type GuideKeeping, loadGuide, loadSoundGuide } from '../../src/guide/index.js'

const TODAY = '2026-11-25'
let folder: string
let trees: string
let keeping: GuideKeeping
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'frondline-kept-'))
  trees = join(folder, 'trees')
  await cp('trees/region.yaml', join(trees, 'region.yaml'))
  keeping = { folder: join(folder, 'guides'), program: 'one build' }
})
afterEach(() => rm(folder, { recursive: true, force: true }))

const load = (how: GuideKeeping | null = keeping) => loadSoundGuide(trees, TODAY, how)
const kept = async (): Promise<string[]> => (await readdir(keeping.folder).catch(() => []))
async function onlyKept(): Promise<string> {
  const names = await kept()
  expect(names).toHaveLength(1)
  return join(keeping.folder, names[0] ?? '')
}

/** Marks what is kept, so that one can see whether it was read. */
async function markKept(): Promise<void> {
  const place = await onlyKept()
  await writeFile(place, serialize({ ...deserialize(await readFile(place)) as object, hash: 'as it was kept' }))
}

describe('a kept guide', () => {
  it('is the same guide as the one compiled', async () => {
    const { guide } = await loadGuide(trees, TODAY)
    expect(guide).not.toBeNull()
    expect((await load()).guide).toEqual(guide)
    expect((await load()).guide).toEqual(guide)
  })

  it('is read, and not compiled again, while no letter has changed', async () => {
    await load()
    await markKept()
    expect((await load()).guide?.hash).toBe('as it was kept')
  })

  it('is the very same one where a process keeps at hand what it has read, until a letter changes', async () => {
    const atHand = { ...keeping, atHand: new Map<string, Guide>() }
    const { guide } = await load(atHand)
    await markKept()
    expect((await load(atHand)).guide).toBe(guide)
    await writeFile(join(trees, 'region.yaml'), `${await readFile(join(trees, 'region.yaml'), 'utf8')}\n# one more line\n`)
    expect((await load(atHand)).guide).not.toBe(guide)
  })

  it('is passed over once a file has changed', async () => {
    await load()
    await markKept()
    await writeFile(join(trees, 'region.yaml'), `${await readFile(join(trees, 'region.yaml'), 'utf8')}\n# one more line\n`)
    expect((await load()).guide?.hash).not.toBe('as it was kept')
  })

  it('is passed over by another build of the program', async () => {
    await load()
    await markKept()
    expect((await load({ ...keeping, program: 'another build' })).guide?.hash).not.toBe('as it was kept')
  })

  it('is compiled anew when it was cut short on the disk', async () => {
    const { guide } = await load()
    await truncate(await onlyKept(), 100)
    expect((await load()).guide).toEqual(guide)
  })

  it('is never one with errors, and they are told each time', async () => {
    await writeFile(join(trees, 'region.yaml'), 'region: [')
    for (const _ of [1, 2]) {
      const { guide, errors } = await load()
      expect(guide).toBeNull()
      expect(errors.length).toBeGreaterThan(0)
    }
    expect(await kept()).toEqual([])
  })

  it('gives way to newer ones, so that the folder does not grow', async () => {
    const text = await readFile(join(trees, 'region.yaml'), 'utf8')
    for (let round = 0; round < 7; round += 1) {
      await writeFile(join(trees, 'region.yaml'), `${text}# ${round}\n`)
      await load()
    }
    expect(await kept()).toHaveLength(4)
  })

  it('costs nothing but time where the folder cannot be written', async () => {
    await writeFile(keeping.folder, 'a file where the folder should be')
    expect((await load()).guide).not.toBeNull()
  })

  it('is not looked for when none are kept', async () => {
    expect((await load(null)).guide).not.toBeNull()
    expect(await kept()).toEqual([])
  })
})
