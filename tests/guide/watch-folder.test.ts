import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Compiled, watchGuideFolder } from '../../src/guide/index.js'
import { makeGuideFolder } from './guide-folder.js'
import { brief, lettuceFiles, lettuceGuide, lettuceText, TODAY } from './lettuce-world.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
let readings: Compiled[]
let faults: unknown[]
let stop: () => Promise<void>

/** Longer than the quiet time that the watch waits for. */
const AFTER_QUIET_MS = 1500

async function until(isSo: () => boolean, forMs: number): Promise<boolean> {
  for (const end = Date.now() + forMs; Date.now() < end;) {
    if (isSo()) return true
    await pause(20)
  }
  return isSo()
}

async function nextReading(): Promise<Compiled> {
  const heard = readings.length
  if (!await until(() => readings.length > heard, 10_000)) throw new Error('The watch read nothing within 10 seconds.')
  const reading = readings[readings.length - 1]
  if (reading === undefined) throw new Error('There is no reading.')
  return reading
}

beforeEach(async () => {
  folder = await makeGuideFolder(lettuceFiles())
  readings = []
  faults = []
  stop = watchGuideFolder(folder.trees, () => TODAY, (compiled) => readings.push(compiled), (error) => faults.push(error))
  // The watch begins a moment after it is asked for: write a remark until it is heard.
  for (let remark = 0; readings.length === 0; remark++) {
    if (remark > 20) throw new Error('The watch did not begin.')
    await folder.write('region.yaml', `${lettuceText('region.yaml')}# ${remark}\n`)
    await until(() => readings.length > 0, AFTER_QUIET_MS)
  }
  readings = []
})

afterEach(async () => {
  await stop()
  await folder.clear()
})

describe('watching the folder of a guide', () => {
  it('gives a new guide after a file has changed', async () => {
    const next = nextReading()
    await folder.write('problems/slugs.yaml', lettuceText('problems/slugs.yaml').replace('yes: usually', 'yes: very often'))
    const { guide, errors } = await next
    expect(errors).toEqual([])
    expect(guide?.hash).not.toBe(lettuceGuide().hash)
    expect(guide?.problems.find(({ id }) => id === 'slugs')?.signs.find(({ check }) => check === guide.checkNumbers.get('slime'))?.words).toEqual(['very often', 'sometimes'])
  })

  it('gives errors after a file was broken, and the guide again once it is mended', async () => {
    const broken = nextReading()
    await folder.write('hosts/lettuce.yaml', lettuceText('hosts/lettuce.yaml').replace('holes: slime', 'holes: slmie'))
    const { guide, errors } = await broken
    expect(guide).toBeNull()
    expect(brief(errors)).toEqual([{ code: 'UNKNOWN_NODE', at: `${folder.trees}/hosts/lettuce.yaml:11:21`, nearest: ['slime'] }])
    const mended = nextReading()
    await folder.write('hosts/lettuce.yaml', lettuceText('hosts/lettuce.yaml'))
    expect((await mended).guide?.hash).toBe(lettuceGuide().hash)
  })

  it('reads once after many rapid changes, and reads the last of them', async () => {
    const next = nextReading()
    for (let change = 0; change < 12; change++) {
      await folder.write('checks/slime.yaml', lettuceText('checks/slime.yaml').replace('Is there slime?', `Is there slime, ${change}?`))
      await pause(15)
    }
    expect((await next).guide?.checks.find(({ id }) => id === 'slime')?.ask).toBe('Is there slime, 11?')
    await pause(AFTER_QUIET_MS)
    expect(readings).toHaveLength(1)
  })

  it('notices files that come and go, and no other kinds of file', async () => {
    const gone = nextReading()
    await rm(join(folder.trees, 'casebook/lettuce.yaml'))
    expect((await gone).guide?.casebook).toEqual([])
    const back = nextReading()
    await folder.write('casebook/spring.yaml', lettuceText('casebook/lettuce.yaml'))
    expect((await back).guide?.casebook.map(({ id }) => id)).toEqual(['lettuce-1'])
    await folder.write('casebook/notes.txt', 'not yaml')
    await pause(AFTER_QUIET_MS)
    expect(readings).toHaveLength(2)
  })

  it('says nothing more once it is stopped, not even of a change already seen', async () => {
    await folder.write('checks/slime.yaml', `${lettuceText('checks/slime.yaml')}# changed\n`)
    await pause(100)
    await stop()
    await folder.write('checks/slime.yaml', `${lettuceText('checks/slime.yaml')}# changed again\n`)
    await pause(AFTER_QUIET_MS)
    expect(readings).toEqual([])
    expect(faults).toEqual([])
  })

  it('tells of a folder that can no longer be read', async () => {
    await folder.clear()
    expect(await until(() => faults.length > 0, 10_000)).toBe(true)
    expect(faults[0]).toMatchObject({ code: 'ENOENT' })
    expect(readings).toEqual([])
  })
})
