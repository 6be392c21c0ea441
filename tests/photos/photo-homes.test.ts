import { mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import S3rver from 's3rver'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type BucketHome, openBucketHome } from '../../src/photos/bucket-home.js'
import { contentHash } from '../../src/photos/content-hash.js'
import { folderHome, type PhotoHome, sweepUnfinished } from '../../src/photos/index.js'

interface OpenHome {
  readonly home: PhotoHome
  close(): Promise<void>
}

const BUCKET = 'larkmoor-photos'

async function openFolder(): Promise<OpenHome> {
  const folder = await mkdtemp(join(tmpdir(), 'frondline-photos-'))
  return { home: folderHome(join(folder, 'photos')), close: () => rm(folder, { recursive: true, force: true }) }
}

/** A bucket of a real server that speaks the S3 protocol. */
async function openBucket(): Promise<OpenHome> {
  const directory = await mkdtemp(join(tmpdir(), 'frondline-bucket-'))
  const server = new S3rver({ port: 0, address: '127.0.0.1', silent: true, directory, configureBuckets: [{ name: BUCKET, configs: [] }] })
  const { port } = await server.run()
  process.env['AWS_ACCESS_KEY_ID'] = 'S3RVER'
  process.env['AWS_SECRET_ACCESS_KEY'] = 'S3RVER'
  const home: BucketHome = await openBucketHome({ bucket: BUCKET, region: 'larkmoor-1', endpoint: `http://127.0.0.1:${port}` })
  return {
    home,
    async close() {
      home.close()
      await server.close()
      await rm(directory, { recursive: true, force: true })
    },
  }
}

async function hashesIn(home: PhotoHome): Promise<string[]> {
  const hashes: string[] = []
  for await (const { hash } of home.list()) hashes.push(hash)
  return hashes.sort()
}

const picture = (text: string) => ({ hash: contentHash(Buffer.from(text)), bytes: Buffer.from(text) })

describe.each([['a folder', openFolder], ['a bucket', openBucket]])('a home of pictures: %s', (_name, openHome) => {
  let open: OpenHome
  let home: PhotoHome
  beforeAll(async () => {
    open = await openHome()
    home = open.home
  })
  afterAll(() => open.close())

  it('is empty at first', async () => {
    expect(await hashesIn(home)).toEqual([])
    const { hash } = picture('never put')
    expect([await home.get(hash), await home.has(hash), await home.putAt(hash)]).toEqual([null, false, null])
  })

  it('gives back what was put, byte for byte', async () => {
    const bytes = Buffer.from(Array.from({ length: 300_000 }, (_, at) => (at * 7) % 256))
    const hash = contentHash(bytes)
    await home.put(hash, bytes)
    expect(Buffer.from(await home.get(hash) ?? []).equals(bytes)).toBe(true)
    expect(await home.has(hash)).toBe(true)
    expect(await hashesIn(home)).toEqual([hash])
    await home.remove(hash)
  })

  it('takes the same picture many times at once and holds it once', async () => {
    const { hash, bytes } = picture('one leaf')
    await Promise.all(Array.from({ length: 8 }, () => home.put(hash, bytes)))
    expect(await hashesIn(home)).toEqual([hash])
    await home.remove(hash)
  })

  it('makes the time new when a picture is put again', async () => {
    const { hash, bytes } = picture('put twice')
    await home.put(hash, bytes)
    const first = await home.putAt(hash) ?? ''
    await new Promise((resolve) => setTimeout(resolve, 1100))
    await home.put(hash, bytes)
    const second = await home.putAt(hash) ?? ''
    expect(second > first).toBe(true)
    await home.remove(hash)
  })

  it('forgets a picture once, and a repeat is no fault', async () => {
    const { hash, bytes } = picture('gone')
    await home.put(hash, bytes)
    await home.remove(hash)
    await home.remove(hash)
    expect([await home.get(hash), await hashesIn(home)]).toEqual([null, []])
  })

  it('takes no name that is not a content hash', async () => {
    for (const name of ['../../etc/passwd', '', 'ABCD', `${'a'.repeat(64)}/x`]) {
      await expect((async () => home.get(name))()).rejects.toThrow('is not a content hash')
      await expect((async () => home.put(name, Buffer.from('x')))()).rejects.toThrow('is not a content hash')
    }
  })
})

describe('a folder of pictures', () => {
  it('leaves nothing but whole pictures, and sweeps what an interrupted write left', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'frondline-photos-'))
    const home = folderHome(folder)
    const { hash, bytes } = picture('whole')
    await home.put(hash, bytes)
    const below = join(folder, hash.slice(0, 2))
    expect(await readdir(below)).toEqual([`${hash}.jpg`])
    await writeFile(join(below, `${hash}.jpg.1234.unfinished`), 'who')
    expect(await hashesIn(home)).toEqual([hash])
    await sweepUnfinished(folder, new Date(Date.now() - 60_000))
    expect(await readdir(below)).toHaveLength(2)
    await sweepUnfinished(folder, new Date(Date.now() + 60_000))
    expect(await readdir(below)).toEqual([`${hash}.jpg`])
    await rm(folder, { recursive: true })
  })

  it('has nothing to list or to sweep where there is no folder yet', async () => {
    const nowhere = join(tmpdir(), 'frondline-no-such-folder')
    expect(await hashesIn(folderHome(nowhere))).toEqual([])
    await sweepUnfinished(nowhere, new Date())
  })

  it('says when a picture was put', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'frondline-photos-'))
    const home = folderHome(folder)
    const { hash, bytes } = picture('dated')
    await home.put(hash, bytes)
    const day = new Date('2026-05-14T12:00:00.000Z')
    await utimes(join(folder, hash.slice(0, 2), `${hash}.jpg`), day, day)
    expect(await home.putAt(hash)).toBe(day.toISOString())
    await rm(folder, { recursive: true })
  })
})
