import { readdir, utimes } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { caseChanges } from '../../src/store/index.js'
import { phoneJpeg, png } from '../photos/pictures.js'
import { askedCheck, first, lettuceCase, NOON, openWorld, type World } from './desk-world.js'

let world: World
beforeEach(async () => {
  world = await openWorld()
})
afterEach(() => world.close())

const key = (number: number) => `upload-of-photo-${String(number).padStart(2, '0')}`
const file = (bytes: Buffer | Promise<Buffer>) => async () => bytes
const never = () => Promise.reject(new Error('the file was read'))

async function openLink(): Promise<string> {
  return (await world.desk.openCase({ words: 'my lettuce is yellow' }, null)).link
}
async function pictureFiles(): Promise<string[]> {
  const all = await readdir(join(world.home, 'photos'), { recursive: true })
  return all.filter((name) => name.endsWith('.jpg')).map((name) => join(world.home, 'photos', name))
}

describe('adding a photo', () => {
  it('writes a change into the case\'s history and leaves the evidence alone', async () => {
    const before = await lettuceCase(world.desk)
    const { photo, case: after } = await world.desk.addPhoto(before.link, key(1), file(phoneJpeg()), null)
    expect(photo).toBe(1)
    expect(after.photos).toEqual([{ photo: 1, width: 40, height: 60, at: NOON, from: 'asker' }])
    expect({ ...after, revision: 0, photos: [] }).toEqual({ ...before, revision: 0, photos: [] })
    const row = first((await world.store.db.selectFrom('case_file').select('id').execute()))
    expect((await caseChanges(world.store.db, row.id)).map(({ kind }) => kind)).toEqual(['opened', 'place', 'photo'])
  })

  it('answers the same photo to the same upload key and does not read the file', async () => {
    const link = await openLink()
    const kept = await world.desk.addPhoto(link, key(1), file(phoneJpeg()), null)
    expect(await world.desk.addPhoto(link, key(1), never, null)).toEqual(kept)
  })

  it('keeps one photo of twenty tries with the same key at once', async () => {
    const link = await openLink()
    const sent = await phoneJpeg()
    const kept = await Promise.all(Array.from({ length: 15 }, () => world.desk.addPhoto(link, key(1), file(sent), null)))
    expect(new Set(kept.map(({ photo }) => photo))).toEqual(new Set([1]))
    expect((await world.desk.showCase(link, null)).photos).toHaveLength(1)
  })

  it('keeps the same content once, whatever the keys, and in each case that sent it', async () => {
    const [link, other] = [await openLink(), await openLink()]
    const sent = await phoneJpeg()
    const one = await world.desk.addPhoto(link, key(1), file(sent), null)
    const two = await world.desk.addPhoto(link, key(2), file(sent), null)
    expect([one.photo, two.photo, two.case.photos.length, two.case.revision]).toEqual([1, 1, 1, 1])
    await world.desk.addPhoto(other, key(1), file(sent), null)
    expect((await world.desk.showPhoto(other, '1', 'large')).hash).toBe((await world.desk.showPhoto(link, '1', 'large')).hash)
    expect(await pictureFiles()).toHaveLength(2)
  })

  it('takes six and no seventh, and one more when one was removed', async () => {
    const link = await openLink()
    for (let number = 1; number <= 6; number++) await world.desk.addPhoto(link, key(number), file(phoneJpeg(60, 40, number * 30)), null)
    await expect(world.desk.addPhoto(link, key(7), never, null)).rejects.toMatchObject({ code: 'PHOTOS_FULL' })
    await world.desk.removePhoto(link, '2', null)
    const { case: now } = await world.desk.addPhoto(link, key(7), file(png()), null)
    expect(now.photos.map(({ photo }) => photo)).toEqual([1, 3, 4, 5, 6, 7])
  })

  it('takes no more than six of nine that come at once', async () => {
    const link = await openLink()
    const sent = await Promise.all(Array.from({ length: 9 }, (_, number) => phoneJpeg(60, 40, number * 25)))
    const tries = await Promise.allSettled(sent.map((bytes, number) => world.desk.addPhoto(link, key(number), file(bytes), null)))
    expect(tries.filter(({ status }) => status === 'rejected')).toHaveLength(3)
    expect((await world.desk.showCase(link, null)).photos.map(({ photo }) => photo)).toEqual([1, 2, 3, 4, 5, 6])
  })

  it('says that somebody of the helpline sent it, when somebody signed in did', async () => {
    const willow = await world.member('willow', 'volunteer')
    const { case: now } = await world.desk.addPhoto(await openLink(), key(1), file(png()), willow)
    expect(first(now.photos).from).toBe('helpline')
  })

  it('keeps nothing of a file that is no photo', async () => {
    const link = await openLink()
    await expect(world.desk.addPhoto(link, key(1), file(Buffer.from('words')), null)).rejects.toMatchObject({ code: 'PHOTO_NOT_A_PICTURE' })
    expect(await world.desk.showCase(link, null)).toMatchObject({ revision: 0, photos: [] })
    // The key is still free, so the next try may bring a photo.
    expect((await world.desk.addPhoto(link, key(1), file(png()), null)).photo).toBe(1)
  })

  it('works after hand-over, and the specialist sees it on the ticket', async () => {
    const link = await openLink()
    await world.desk.handOver(link, { revision: 0 }, null)
    await world.desk.addPhoto(link, key(1), file(png()), null)
    const sedge = await world.member('sedge', 'specialist')
    expect((await world.desk.showTicket('1', sedge)).case.photos).toMatchObject([{ photo: 1, from: 'asker' }])
  })

  it('answers a specialist who asked for photos', async () => {
    const link = await openLink()
    await world.desk.handOver(link, { revision: 0 }, null)
    const sedge = await world.member('sedge', 'specialist')
    await world.desk.askBack('1', { text: 'Show me a leaf from below.', checks: [], photos: true }, sedge)
    await world.desk.addPhoto(link, key(1), file(png()), null)
    const ticket = await world.desk.showTicket('1', sedge)
    expect(ticket.state).toBe('answered by asker')
    expect(ticket.history.map(({ what }) => what)).toContain('The asker sent a photo')
  })

  it('keeps a finding that was read off a photo as one from a photo', async () => {
    const { link, revision, step } = await lettuceCase(world.desk)
    if (step.kind !== 'ask') throw new Error('expected a check')
    const added = await world.desk.addPhoto(link, key(1), file(png()), null)
    const sedge = await world.member('sedge', 'specialist')
    const view = await world.desk.answerCheck(
      link, { revision: added.case.revision, check: step.check.id, answer: first(step.check.answers), from: 'photo' }, sedge)
    expect(view.lines).toMatchObject([{ check: { id: step.check.id }, from: 'photo' }])
    expect(view.revision).toBe(revision + 2)
  })
})

describe('a photo beside other changes', () => {
  it('does not make an answer stale that was given while it was under way', async () => {
    const view = await lettuceCase(world.desk)
    const { id, answers } = askedCheck(view)
    await world.desk.addPhoto(view.link, key(1), file(png()), null)
    const answered = await world.desk.answerCheck(view.link, { revision: view.revision, check: id, answer: first(answers) }, null)
    expect([answered.revision, answered.lines.length]).toEqual([view.revision + 2, 1])
    // The reply was lost, and the same answer comes again.
    expect(await world.desk.answerCheck(view.link, { revision: view.revision, check: id, answer: first(answers) }, null)).toEqual(answered)
    // Another answer on what was seen before the first one is as stale as ever.
    await expect(world.desk.answerCheck(view.link, { revision: view.revision, check: id, answer: 'not sure' }, null))
      .rejects.toMatchObject({ code: 'STALE_REVISION' })
  })

  it('does not hold up a hand-over', async () => {
    const link = await openLink()
    await world.desk.addPhoto(link, key(1), file(png()), null)
    expect((await world.desk.handOver(link, { revision: 0 }, null)).ticket).toMatchObject({ state: 'waiting' })
  })

  it('still refuses a revision that the case has not come to', async () => {
    const link = await openLink()
    await expect(world.desk.addWords(link, { revision: 5, words: 'and now' }, null)).rejects.toMatchObject({ code: 'STALE_REVISION' })
  })
})

describe('removing a photo', () => {
  it('is shown to nobody afterwards; a repeat changes nothing, and a late try of its upload does not bring it back', async () => {
    const link = await openLink()
    await world.desk.addPhoto(link, key(1), file(phoneJpeg()), null)
    const removed = await world.desk.removePhoto(link, '1', null)
    expect(removed.photos).toEqual([])
    await expect(world.desk.showPhoto(link, '1', 'small')).rejects.toMatchObject({ code: 'PHOTO_NOT_FOUND' })
    expect(await world.desk.removePhoto(link, '1', null)).toEqual(removed)
    await expect(world.desk.addPhoto(link, key(1), never, null)).rejects.toMatchObject({ code: 'PHOTO_REMOVED' })
    // Chosen anew on purpose, the same picture is a new photo.
    expect((await world.desk.addPhoto(link, key(2), file(phoneJpeg()), null)).photo).toBe(2)
  })

  it('is for the asker before hand-over, and for a specialist always', async () => {
    const link = await openLink()
    await world.desk.addPhoto(link, key(1), file(png()), null)
    await world.desk.handOver(link, { revision: 0 }, null)
    const willow = await world.member('willow', 'volunteer')
    for (const who of [null, willow]) {
      await expect(world.desk.removePhoto(link, '1', who)).rejects.toMatchObject({ code: 'PHOTO_HANDED_OVER' })
    }
    const sedge = await world.member('sedge', 'specialist')
    expect((await world.desk.removePhoto(link, '1', sedge)).photos).toEqual([])
  })
})

describe('the sweep of pictures', () => {
  async function makeOld(): Promise<void> {
    const old = new Date(Date.parse(NOON) - 3_600_000)
    for (const path of await pictureFiles()) await utimes(path, old, old)
  }

  it('takes the pictures that no photo shows any more and leaves the others', async () => {
    const [link, other] = [await openLink(), await openLink()]
    await world.desk.addPhoto(link, key(1), file(phoneJpeg()), null)
    await world.desk.addPhoto(link, key(2), file(png()), null)
    await world.desk.addPhoto(other, key(1), file(png()), null)
    await makeOld()
    expect(await world.desk.sweepPictures()).toBe(0)

    await world.desk.removePhoto(link, '1', null)
    await world.desk.removePhoto(link, '2', null)
    expect(await world.desk.sweepPictures()).toBe(2)
    expect((await world.desk.showPhoto(other, '1', 'large')).bytes.length).toBeGreaterThan(100)
    expect(await world.desk.sweepPictures()).toBe(0)
  })

  it('leaves a picture alone that was put a moment ago: its upload may still be about to name it', async () => {
    const link = await openLink()
    await world.desk.addPhoto(link, key(1), file(png()), null)
    await world.desk.removePhoto(link, '1', null)
    world.now = new Date()
    expect(await world.desk.sweepPictures()).toBe(0)
    world.now = new Date(Date.now() + 31 * 60_000)
    expect(await world.desk.sweepPictures()).toBe(2)
  })
})
