import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MAX_PHOTO_BYTES, MAX_PHOTOS, PHOTO_KINDS } from '../../shared/index.js'
import { buildWeb } from '../../src/web/build-web.js'
import { KINDS, MOST_BYTES, MOST_PHOTOS } from '../../src/web/case/photo-limits.js'

describe('the panel’s script', () => {
  let folder: string
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'frondline-first-paint-'))
    await buildWeb(folder)
  }, 300_000)
  afterAll(() => rm(folder, { recursive: true, force: true }))

  it('is at most 20 kB for the first paint, compressed, styles and words included', async () => {
    const loader = await readFile(join(folder, 'panel.js'))
    const [core, ...others] = (await readdir(join(folder, 'panel'))).filter(name => name.startsWith('core-'))
    expect(others).toEqual([])
    expect(loader.toString()).toContain(`panel/${core}`)
    const first = await readFile(join(folder, 'panel', core ?? ''))
    // What the first module imports at once would belong to the first paint as well.
    expect(first.toString()).not.toMatch(/\bimport\s*[{*"']|\bfrom\s*["']/)
    expect(gzipSync(loader).length + gzipSync(first).length).toBeLessThanOrEqual(20_000)
  })

  it('loads the sheet of an open case later, from beside itself', async () => {
    const names = await readdir(join(folder, 'panel'))
    const core = await readFile(join(folder, 'panel', names.find(name => name.startsWith('core-')) ?? ''), 'utf8')
    const later = names.filter(name => name.startsWith('filled-sheet-'))
    expect(later).toHaveLength(1)
    expect(core).toContain(`./${later[0]}`)
  })

  it('knows of photos what the wire says', () => {
    expect({ KINDS, MOST_BYTES, MOST_PHOTOS }).toEqual({ KINDS: PHOTO_KINDS, MOST_BYTES: MAX_PHOTO_BYTES, MOST_PHOTOS: MAX_PHOTOS })
  })
})
