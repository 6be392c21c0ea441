import { randomBytes } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createDesk, type Desk, eraseAsker, type Member } from '../../../src/desk/index.js'
import { seededRandom } from '../../../src/engine/index.js'
import { folderHome } from '../../../src/photos/index.js'
import { openStore, type Store } from '../../../src/store/index.js'
import { join } from 'node:path'
import { phoneJpeg } from '../../photos/pictures.js'
import { testStore } from '../../store/test-store.js'
import { askedCheck, first, lettuceCase, NOON, openWorld, testKeys, type World } from '../desk-world.js'

let world: World
let otherStore: Store
/** The desk of another process on the same store. */
let other: Desk

beforeEach(async () => {
  world = await openWorld()
  otherStore = await openStore(await testStore(world.home))
  other = deskOn(otherStore)
})

afterEach(async () => {
  await otherStore.close()
  await world.close()
})

function deskOn(store: Store): Desk {
  return createDesk({
    db: store.db, listen: store.listen, guide: () => world.guide, photos: folderHome(join(world.home, 'photos')), mail: null,
    report: (fault) => { throw fault }, clock: () => new Date(NOON), randomBytes: (count) => randomBytes(count), keys: testKeys(),
  })
}

/** What a desk shows that has kept nothing yet. */
const fresh = (link: string, who: Member | null): ReturnType<Desk['showCase']> => deskOn(otherStore).showCase(link, who)

const photoKey = (): string => randomBytes(18).toString('base64url')

describe('a case that is shown again', () => {
  it('is the very same view while nothing was changed', async () => {
    const { link } = await lettuceCase(world.desk)
    const shown = await world.desk.showCase(link, null)
    expect(await world.desk.showCase(link, null)).toBe(shown)
    expect(Object.isFrozen(shown)).toBe(true)
  })

  it('shows at once what another process changed: an answer, a photo, a note, a ticket, an answer to it', async () => {
    const { link, revision, ...view } = await lettuceCase(world.desk)
    const { id, answers } = askedCheck({ link, revision, ...view })
    const volunteer = await world.member('Wren Alder', 'volunteer')
    const specialist = await world.member('Rowan Teal', 'specialist')
    const both = async () => {
      for (const who of [null, volunteer]) expect(await world.desk.showCase(link, who)).toEqual(await fresh(link, who))
      return world.desk.showCase(link, null)
    }
    await both()
    await other.answerCheck(link, { revision, check: id, answer: first(answers) }, null)
    expect((await both()).lines.map(({ check }) => check.id)).toContain(id)
    await other.addPhoto(link, photoKey(), async () => phoneJpeg(), null)
    expect((await both()).photos).toHaveLength(1)
    await other.noteCall(link, { revision: (await both()).revision, text: 'calls back at noon' }, volunteer)
    expect((await world.desk.showCase(link, volunteer)).notes).toHaveLength(1)
    await other.handOver(link, { revision: (await both()).revision }, null)
    expect((await both()).ticket?.state).toBe('waiting')
    const { ticket } = first((await other.listTickets({ state: 'any' })).tickets)
    await other.takeTicket(ticket, specialist)
    expect((await both()).ticket?.state).toBe('taken')
  })

  it('keeps a photo that another process added between two answers', async () => {
    const view = await lettuceCase(world.desk)
    const { id, answers } = askedCheck(view)
    await other.addPhoto(view.link, photoKey(), async () => phoneJpeg(), null)
    const answered = await world.desk.answerCheck(view.link, { revision: view.revision, check: id, answer: first(answers) }, null)
    expect(answered.photos).toHaveLength(1)
    expect(answered).toEqual(await fresh(view.link, null))
  })

  it('is gone as soon as another process has erased it', async () => {
    const { link } = await lettuceCase(world.desk)
    await world.desk.showCase(link, null)
    await eraseAsker({ db: otherStore.db, now: () => new Date(NOON), randomBytes: (count) => randomBytes(count), keys: testKeys() }, link)
    await expect(world.desk.showCase(link, null)).rejects.toThrow('CASE_NOT_FOUND')
  })

  it('is made anew with a new guide', async () => {
    const { link } = await lettuceCase(world.desk)
    await world.desk.showCase(link, null)
    world.guide = { ...world.guide, hash: 'another' }
    expect((await world.desk.showCase(link, null)).guide).toBe('another')
  })

  it('tells an asker nothing of the notes that the helpline reads', async () => {
    const { link, revision } = await lettuceCase(world.desk)
    const volunteer = await world.member('Wren Alder', 'volunteer')
    await world.desk.noteCall(link, { revision, text: 'calls back at noon' }, volunteer)
    expect((await world.desk.showCase(link, volunteer)).notes).toHaveLength(1)
    expect((await world.desk.showCase(link, null)).notes).toEqual([])
  })

  it('is what a desk shows that kept nothing, whoever of two processes does what', async () => {
    const random = seededRandom(7)
    const volunteer = await world.member('Wren Alder', 'volunteer')
    let view = await lettuceCase(world.desk)
    const { link } = view
    for (let turn = 0; turn < 30; turn++) {
      const desk = random() < 0.5 ? world.desk : other
      const who = random() < 0.3 ? volunteer : null
      const { revision, lines, step } = await desk.showCase(link, who)
      const draw = random()
      if (draw < 0.15) view = (await desk.addPhoto(link, photoKey(), async () => phoneJpeg(60, 40, turn), who).catch(() => ({ case: view }))).case
      else if (draw < 0.3 && lines.length > 0) view = await desk.takeBack(link, { revision, check: first(lines).check.id }, who)
      else if (draw < 0.4 && who !== null) view = await desk.noteCall(link, { revision, text: `note ${turn}` }, who)
      else if (draw < 0.5 && view.photos.length > 0) view = await desk.removePhoto(link, first(view.photos).photo.toString(), who)
      else if (step.kind === 'ask') view = await desk.answerCheck(link, { revision, check: step.check.id, answer: first(step.check.answers) }, who)
      else if (lines.length > 0) view = await desk.takeBack(link, { revision, check: first(lines).check.id }, who)
      for (const [shown, seenBy] of [[await world.desk.showCase(link, null), null], [await other.showCase(link, volunteer), volunteer]] as const) {
        expect(shown).toEqual(await fresh(link, seenBy))
      }
    }
    expect(view.revision).toBeGreaterThan(15)
  })
})
