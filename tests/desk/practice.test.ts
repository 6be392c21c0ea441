import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { PracticeCall, PracticeTruth } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { openWorld, type World } from './desk-world.js'

let world: World
let reed: Member
beforeEach(async () => {
  world = await openWorld()
  reed = await world.member('reed', 'volunteer')
})
afterEach(() => world.close())

describe('desk: practising on worked cases', () => {
  it('gives every worked case once before any comes again', () => {
    const done: string[] = []
    const all = world.guide.casebook.length
    for (let turn = 0; turn < all; turn += 1) {
      const call = world.desk.nextPractice(done)
      expect(PracticeCall.parse(call)).toEqual(call)
      expect(call.left).toBe(all - turn)
      done.push(call.practice)
    }
    expect(new Set(done)).toEqual(new Set(world.guide.casebook.map(({ id }) => id)))
    expect(done).toContain(world.desk.nextPractice(done).practice)
  })

  it('tells what the caller would see and how the case truly ended', () => {
    for (const { id, ends } of world.guide.casebook) {
      const truth = world.desk.practiceTruth(id)
      expect(PracticeTruth.parse(truth)).toEqual(truth)
      expect(truth.ends.kind).toBe(ends.kind)
    }
    expect(() => world.desk.practiceTruth('no-such-case')).toThrow('PRACTICE_NOT_FOUND')
  })

  it('opens a call on the worked case’s own day, marked as practised', async () => {
    const { practice, words, on } = world.desk.nextPractice([])
    const view = await world.desk.openCase({ words, practice }, reed)
    expect(view).toMatchObject({ practice, askedOn: on })
    expect((await world.desk.listCalls(reed)).calls).toMatchObject([{ link: view.link }])
  })

  it('opens no ticket from a practised call', async () => {
    const { practice, words } = world.desk.nextPractice([])
    const { link, revision } = await world.desk.openCase({ words, practice }, reed)
    await expect(world.desk.handOver(link, { revision }, reed)).rejects.toThrow('ONLY_PRACTICE')
    expect((await world.desk.listTickets({ state: 'any' })).tickets).toEqual([])
  })

  it('is not for the public, and knows only worked cases', async () => {
    const { practice, words } = world.desk.nextPractice([])
    await expect(world.desk.openCase({ words, practice }, null)).rejects.toThrow('PRACTICE_NOT_FOUND')
    await expect(world.desk.openCase({ words, practice: 'no-such-case' }, reed)).rejects.toThrow('PRACTICE_NOT_FOUND')
  })
})
