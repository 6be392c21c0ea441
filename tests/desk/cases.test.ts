import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CaseView } from '../../shared/index.js'
import { CANT_LOOK, NOT_SURE } from '../../src/guide/index.js'
import { caseByLink, caseChanges } from '../../src/store/index.js'
import { askedCheck, BERRY_WORDS, first, LETTUCE_WORDS, lettuceCase, openWorld, TELLING_WORDS, type World } from './desk-world.js'

let world: World
beforeEach(async () => {
  world = await openWorld()
})
afterEach(() => world.close())

const history = async (link: string) => {
  const row = await caseByLink(world.store.db, link)
  return row === undefined ? [] : caseChanges(world.store.db, row.id)
}

describe('desk: answers that the words already give', () => {
  const said = (view: CaseView) => view.lines.filter(({ from }) => from === 'said').map(({ check, answer }) => [check.id, answer])

  it('fills in what the asker has said, as said', async () => {
    const view = await world.desk.openCase({ words: TELLING_WORDS }, null)
    expect(said(view)).toContainEqual(['leaf-underside', 'white or grey fuzz'])
    expect(view.place.confidence).toBeGreaterThan(0.5)
    expect(view.place.outOfScope).toBe(false)
  })

  it('lets an answer that is asked for win, whatever is said afterwards', async () => {
    const opened = await world.desk.openCase({ words: TELLING_WORDS }, null)
    const answered = await world.desk.answerCheck(opened.link, { revision: 0, check: 'leaf-underside', answer: 'nothing to see' }, null)
    expect(answered.lines.find(({ check }) => check.id === 'leaf-underside')).toMatchObject({ answer: 'nothing to see', from: 'asked' })
    const more = await world.desk.addWords(opened.link, { revision: 1, words: 'there is white fuzz underneath' }, null)
    expect(more.lines.find(({ check }) => check.id === 'leaf-underside')).toMatchObject({ answer: 'nothing to see', from: 'asked' })
  })

  it('hears the answers of another plant when the asker says it is another', async () => {
    const opened = await world.desk.openCase({ words: TELLING_WORDS }, null)
    const settled = await world.desk.settlePlace(opened.link, { revision: 0, host: 'lawn', node: null }, null)
    expect(said(settled)).toEqual([])
  })

  it('says when nothing was heard that a helpline can answer', async () => {
    const view = await world.desk.openCase({ words: 'what time do you open' }, null)
    expect(view.place).toMatchObject({ outOfScope: true, host: null })
  })
})

describe('desk: opening a case', () => {
  it('hears the plant and the complaint, best first, and waits for them to be confirmed', async () => {
    const view = await world.desk.openCase({ words: LETTUCE_WORDS, district: 'holt-fen' }, null)
    expect(CaseView.parse(view)).toEqual(view)
    expect(view).toMatchObject({
      revision: 0, words: [LETTUCE_WORDS], district: 'holt-fen', askedOn: '2026-05-14', cards: [], carriedOn: false,
      lines: [], notes: [], ticket: null, step: { kind: 'place' }, guide: world.guide.hash,
    })
    expect(view.place.host).toBeNull()
    expect(first(view.place.hosts)).toMatchObject({ host: 'lettuce', name: 'Lettuce' })
    expect(first(view.place.entries).host).toBe('lettuce')
  })

  it('gives each case an own link of 192 random bits', async () => {
    const links = new Set<string>()
    for (let turn = 0; turn < 5; turn++) links.add((await world.desk.openCase({ words: 'help' }, null)).link)
    expect(links.size).toBe(5)
    for (const link of links) expect(Buffer.from(link, 'base64url')).toHaveLength(24)
  })

  it('shows a red flag at once, with the region\'s numbers and nothing else in the way', async () => {
    const view = await world.desk.openCase({ words: BERRY_WORDS }, null)
    expect(view.step).toEqual({ kind: 'red-flag' })
    const card = first(view.cards)
    expect(card).toMatchObject({ level: 'emergency', then: 'carry on' })
    const regional = [...world.guide.region.numbers.values()]
    expect(card.calls.length).toBeGreaterThan(0)
    for (const call of card.calls) expect(regional).toContainEqual(call)
  })

  it('refuses a district that the region does not have, and keeps nothing', async () => {
    await expect(world.desk.openCase({ words: 'help', district: 'nowhere' }, null))
      .rejects.toMatchObject({ code: 'UNKNOWN_DISTRICT', facts: { words: { district: 'nowhere' } } })
    expect(await world.store.db.selectFrom('case_file').selectAll().execute()).toEqual([])
  })

  it('makes it the call of whoever is signed in', async () => {
    const willow = await world.member('willow', 'volunteer')
    const view = await world.desk.openCase({ words: 'help' }, willow)
    await world.desk.openCase({ words: 'help from the public' }, null)
    expect((await world.desk.listCalls(willow)).calls.map(({ link }) => link)).toEqual([view.link])
  })
})

describe('desk: working a case', () => {
  it('settles the place and asks the first check of the tree', async () => {
    const view = await lettuceCase(world.desk)
    expect(view).toMatchObject({ revision: 1, place: { host: { host: 'lettuce' }, node: null, complaint: null } })
    const host = world.guide.hosts.find(({ id }) => id === 'lettuce')
    const check = world.guide.checks[host?.nodes[host.start]?.check ?? -1]
    expect(askedCheck(view).id).toBe(check?.id)
  })

  it('says the settled complaint in the words of the entry that was heard', async () => {
    const opened = await world.desk.openCase({ words: LETTUCE_WORDS }, null)
    const entry = first(opened.place.entries)
    const view = await world.desk.settlePlace(
      opened.link, { revision: 0, host: entry.host, node: entry.node }, null)
    expect(view.place).toMatchObject({ node: entry.node, complaint: entry.phrase })
  })

  it('writes an answer on a line and asks on', async () => {
    const before = await lettuceCase(world.desk)
    const check = askedCheck(before)
    const answer = first(check.answers)
    const view = await world.desk.answerCheck(before.link, { revision: 1, check: check.id, answer }, null)
    expect(view.revision).toBe(2)
    expect(view.lines).toEqual([{ check: expect.objectContaining({ id: check.id }), answer, from: 'asked', onPath: true }])
    expect(view.step.kind === 'ask' ? view.step.check.id : null).not.toBe(check.id)
  })

  it.each([NOT_SURE, CANT_LOOK])('takes "%s" as an answer to any check', async (answer) => {
    const before = await lettuceCase(world.desk)
    const view = await world.desk.answerCheck(
      before.link, { revision: 1, check: askedCheck(before).id, answer }, null)
    expect(view.lines.map((line) => line.answer)).toEqual([answer])
  })

  it('changes an earlier answer in its place on the sheet', async () => {
    let view = await lettuceCase(world.desk)
    const asked = askedCheck(view)
    view = await world.desk.answerCheck(view.link, { revision: 1, check: asked.id, answer: 'not sure' }, null)
    const next = askedCheck(view)
    view = await world.desk.answerCheck(view.link, { revision: 2, check: next.id, answer: 'not sure' }, null)
    const answer = first(asked.answers)
    view = await world.desk.answerCheck(view.link, { revision: 3, check: asked.id, answer, from: 'note' }, null)
    expect(view.lines.map((line) => [line.check.id, line.answer, line.from])).toEqual([
      [asked.id, answer, 'note'], [next.id, 'not sure', 'asked'],
    ])
    expect((await history(view.link)).map(({ kind }) => kind)).toEqual(['opened', 'place', 'answer', 'answer', 'answer'])
  })

  it('listens to further words together with the first', async () => {
    const opened = await world.desk.openCase({ words: 'white fuzz underneath and yellow blocks' }, null)
    const view = await world.desk.addWords(opened.link, { revision: 0, words: 'it is a lettuce' }, null)
    expect(view.words).toEqual(['white fuzz underneath and yellow blocks', 'it is a lettuce'])
    expect(first(view.place.hosts).host).toBe('lettuce')
  })

  it('refuses a case that does not exist', async () => {
    await expect(world.desk.showCase('x'.repeat(32), null)).rejects.toMatchObject({ code: 'CASE_NOT_FOUND' })
    await expect(world.desk.carryOn('x'.repeat(32), { revision: 0 }, null)).rejects.toMatchObject({ code: 'CASE_NOT_FOUND' })
  })

  it('refuses what the guide does not know, and changes nothing', async () => {
    const before = await lettuceCase(world.desk)
    const { link } = before
    const { desk } = world
    await expect(desk.settlePlace(link, { revision: 1, host: 'triffid', node: null }, null))
      .rejects.toMatchObject({ code: 'UNKNOWN_HOST' })
    await expect(desk.settlePlace(link, { revision: 1, host: 'lettuce', node: 'attic' }, null))
      .rejects.toMatchObject({ code: 'UNKNOWN_NODE' })
    await expect(desk.answerCheck(link, { revision: 1, check: 'leaf-song', answer: 'not sure' }, null))
      .rejects.toMatchObject({ code: 'UNKNOWN_CHECK' })
    await expect(desk.answerCheck(link, { revision: 1, check: askedCheck(before).id, answer: 'purple' }, null))
      .rejects.toMatchObject({ code: 'UNKNOWN_ANSWER' })
    expect(await desk.showCase(link, null)).toEqual(before)
    expect(await history(link)).toHaveLength(2)
  })

  it('takes forty messages and no more, and can still be handed over', async () => {
    const { link } = await world.desk.openCase({ words: 'help' }, null)
    for (let revision = 0; revision < 39; revision++) await world.desk.addWords(link, { revision, words: 'more' }, null)
    await expect(world.desk.addWords(link, { revision: 39, words: 'more' }, null)).rejects.toMatchObject({ code: 'CASE_FULL' })
    expect(await world.desk.handOver(link, { revision: 39 }, null)).toMatchObject({ ticket: { state: 'waiting' } })
  })
})

describe('desk: opening a case twice with one key', () => {
  const key = 'a-random-name-of-22-letters'

  it('brings the case that the first sending opened, as it stands now', async () => {
    const opened = await world.desk.openCase({ words: LETTUCE_WORDS, district: 'holt-fen', key }, null)
    const settled = await world.desk.settlePlace(opened.link, { revision: 0, host: 'lettuce', node: null }, null)
    expect(await world.desk.openCase({ words: LETTUCE_WORDS, district: 'holt-fen', key }, null)).toEqual(settled)
    expect(await world.store.db.selectFrom('case_file').selectAll().execute()).toHaveLength(1)
  })

  it('opens one case when both sendings are under way at once', async () => {
    const views = await Promise.all(Array.from({ length: 6 }, () => world.desk.openCase({ words: LETTUCE_WORDS, key }, null)))
    expect(new Set(views.map(({ link }) => link)).size).toBe(1)
    expect(await world.store.db.selectFrom('case_file').selectAll().execute()).toHaveLength(1)
  })

  it('refuses the key with other words, another district or another person, and keeps the key itself nowhere', async () => {
    await world.desk.openCase({ words: LETTUCE_WORDS, key }, null)
    const willow = await world.member('willow', 'volunteer')
    await expect(world.desk.openCase({ words: 'something else', key }, null)).rejects.toMatchObject({ code: 'KEY_USED' })
    await expect(world.desk.openCase({ words: LETTUCE_WORDS, district: 'eastmere', key }, null)).rejects.toMatchObject({ code: 'KEY_USED' })
    await expect(world.desk.openCase({ words: LETTUCE_WORDS, key }, willow)).rejects.toMatchObject({ code: 'KEY_USED' })
    expect(JSON.stringify(await world.store.db.selectFrom('case_file').selectAll().execute())).not.toContain(key)
  })

  it('opens a case each time without a key', async () => {
    for (let turn = 0; turn < 2; turn++) await world.desk.openCase({ words: LETTUCE_WORDS }, null)
    expect(await world.store.db.selectFrom('case_file').selectAll().execute()).toHaveLength(2)
  })
})

describe('desk: an answer before the plant is settled', () => {
  it('is refused and kept nowhere, whether or not a warning card is showing', async () => {
    for (const words of [LETTUCE_WORDS, BERRY_WORDS]) {
      const { link } = await world.desk.openCase({ words }, null)
      await expect(world.desk.answerCheck(link, { revision: 0, check: 'plant-part', answer: 'not sure' }, null)).rejects.toMatchObject({ code: 'PLACE_FIRST' })
      expect(await history(link)).toHaveLength(1)
    }
  })
})

describe('desk: taking an answer back', () => {
  it('opens the check again, keeps both in the history, and takes a repeat once', async () => {
    const before = await lettuceCase(world.desk)
    const check = askedCheck(before)
    const answered = await world.desk.answerCheck(before.link, { revision: 1, check: check.id, answer: first(check.answers) }, null)
    const back = await world.desk.takeBack(before.link, { revision: answered.revision, check: check.id }, null)
    expect({ lines: back.lines, step: back.step }).toEqual({ lines: before.lines, step: before.step })
    expect((await history(before.link)).map(({ kind }) => kind)).toEqual(['opened', 'place', 'answer', 'take-back'])
    expect(await world.desk.takeBack(before.link, { revision: answered.revision, check: check.id }, null)).toEqual(back)
  })

  it('is refused for a check that has no answer', async () => {
    const before = await lettuceCase(world.desk)
    await expect(world.desk.takeBack(before.link, { revision: 1, check: askedCheck(before).id }, null)).rejects.toMatchObject({ code: 'NOT_ANSWERED' })
  })
})

describe('desk: the revision rule', () => {
  it('takes a repeated change once, however late the repeat', async () => {
    const before = await lettuceCase(world.desk)
    const { id: check, answers } = askedCheck(before)
    const body = { revision: 1, check, answer: first(answers) }
    const once = await world.desk.answerCheck(before.link, body, null)
    expect(await world.desk.answerCheck(before.link, body, null)).toEqual(once)
    expect(await world.desk.answerCheck(before.link, { ...body, from: 'asked' }, null)).toEqual(once)
    const later = await world.desk.addWords(before.link, { revision: 2, words: 'and slugs' }, null)
    expect(await world.desk.answerCheck(before.link, body, null)).toEqual(later)
    expect(await history(before.link)).toHaveLength(4)
  })

  it('refuses another change from an old revision and shows the case as it stands', async () => {
    const before = await lettuceCase(world.desk)
    const { id: check, answers } = askedCheck(before)
    const now = await world.desk.answerCheck(before.link, { revision: 1, check, answer: first(answers) }, null)
    await expect(world.desk.answerCheck(before.link, { revision: 1, check, answer: 'not sure' }, null))
      .rejects.toMatchObject({ code: 'STALE_REVISION', facts: { case: now } })
    await expect(world.desk.answerCheck(before.link, { revision: 7, check, answer: 'not sure' }, null))
      .rejects.toMatchObject({ code: 'STALE_REVISION', facts: { case: now } })
    expect(await world.desk.showCase(before.link, null)).toEqual(now)
  })

  it('applies exactly one of twenty different changes sent at once', async () => {
    const { link } = await lettuceCase(world.desk)
    const outcomes = await Promise.allSettled(Array.from({ length: 20 }, (_, turn) => (
      world.desk.addWords(link, { revision: 1, words: `message ${turn}` }, null))))
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    for (const outcome of outcomes) {
      if (outcome.status === 'rejected') expect(outcome.reason).toMatchObject({ code: 'STALE_REVISION' })
    }
    expect(await world.desk.showCase(link, null)).toMatchObject({ revision: 2, words: [LETTUCE_WORDS, expect.anything()] })
    expect(await history(link)).toHaveLength(3)
  })

  it('applies twenty equal changes sent at once a single time and refuses none', async () => {
    const { link } = await lettuceCase(world.desk)
    const views = await Promise.all(Array.from({ length: 20 }, () => (
      world.desk.addWords(link, { revision: 1, words: 'and slugs' }, null))))
    expect(new Set(views.map(({ revision }) => revision))).toEqual(new Set([2]))
    expect(await history(link)).toHaveLength(3)
  })
})

describe('desk: red flags in a case', () => {
  it('carries on after a card that lets it, and keeps the card', async () => {
    const opened = await world.desk.openCase({ words: BERRY_WORDS }, null)
    const view = await world.desk.carryOn(opened.link, { revision: 0 }, null)
    expect(view).toMatchObject({ carriedOn: true, step: { kind: 'place' }, cards: opened.cards })
  })

  it('stops again at an emergency that comes up later', async () => {
    const opened = await world.desk.openCase({ words: BERRY_WORDS }, null)
    await world.desk.carryOn(opened.link, { revision: 0 }, null)
    const view = await world.desk.addWords(opened.link, { revision: 1, words: 'now he cannot breathe' }, null)
    expect(view).toMatchObject({ carriedOn: false, step: { kind: 'red-flag' } })
    expect(view.cards.length).toBeGreaterThan(opened.cards.length)
  })

  it('does not stop again for what was acknowledged', async () => {
    const opened = await world.desk.openCase({ words: BERRY_WORDS }, null)
    await world.desk.carryOn(opened.link, { revision: 0 }, null)
    const view = await world.desk.addWords(opened.link, { revision: 1, words: 'the leaves are spotted' }, null)
    expect(view).toMatchObject({ carriedOn: true, step: { kind: 'place' }, cards: opened.cards })
  })

  it('does not carry on when the card ends the plant question, but can be handed over', async () => {
    const opened = await world.desk.openCase({ words: 'I sprayed it and now I cannot breathe' }, null)
    expect(opened.cards.some((card) => card.then === 'stop')).toBe(true)
    await expect(world.desk.carryOn(opened.link, { revision: 0 }, null)).rejects.toMatchObject({ code: 'CASE_STOPPED' })
    expect(await world.desk.handOver(opened.link, { revision: 0 }, null)).toMatchObject({ ticket: { state: 'waiting' } })
  })

  it('has nothing to carry on from without a card', async () => {
    const { link } = await world.desk.openCase({ words: LETTUCE_WORDS }, null)
    await expect(world.desk.carryOn(link, { revision: 0 }, null)).rejects.toMatchObject({ code: 'NO_RED_FLAG' })
  })

  it('hears a red flag in a volunteer\'s note', async () => {
    const willow = await world.member('willow', 'volunteer')
    const { link } = await world.desk.openCase({ words: LETTUCE_WORDS }, willow)
    const view = await world.desk.noteCall(link, { revision: 0, text: BERRY_WORDS }, willow)
    expect(view.step).toEqual({ kind: 'red-flag' })
    expect(view.notes).toEqual([{ text: BERRY_WORDS, at: world.now.toISOString() }])
  })

  it('keeps the card that an answer raised when the answer is changed', async () => {
    const shipped = world.guide
    const before = await lettuceCase(world.desk)
    const asked = askedCheck(before)
    // The shipped guide with one answer of this check raising its first emergency that may carry on.
    const redFlag = shipped.redFlags.findIndex((flag) => flag.level === 'emergency' && flag.then === 'carry on')
    world.guide = {
      ...shipped,
      checks: shipped.checks.map((check) => (check.id !== asked.id ? check : {
        ...check, answers: check.answers.map((answer, at) => (at === 0 ? { ...answer, redFlag } : answer)),
      })),
    }
    const raised = await world.desk.answerCheck(
      before.link, { revision: 1, check: asked.id, answer: first(asked.answers) }, null)
    expect(raised).toMatchObject({ step: { kind: 'red-flag' }, cards: [{ id: shipped.redFlags[redFlag]?.id }] })
    const changed = await world.desk.answerCheck(before.link, { revision: 2, check: asked.id, answer: 'not sure' }, null)
    expect(changed.cards).toEqual(raised.cards)
    expect(changed.step).toEqual({ kind: 'red-flag' })
  })
})

describe('desk: the guide moves on under a case', () => {
  it('leaves out a finding whose check or answer is gone, and keeps it in the history', async () => {
    const shipped = world.guide
    let view = await lettuceCase(world.desk)
    const asked = askedCheck(view)
    view = await world.desk.answerCheck(view.link, { revision: 1, check: asked.id, answer: first(asked.answers) }, null)
    world.guide = {
      ...shipped, hash: 'next',
      checks: shipped.checks.map((check) => (check.id !== asked.id ? check : {
        ...check, answers: check.answers.map((answer, at) => (at === 0 ? { ...answer, label: 'reworded' } : answer)),
      })),
    }
    const after = await world.desk.showCase(view.link, null)
    expect(after).toMatchObject({ lines: [], guide: 'next', revision: 2 })
    expect(first((await history(view.link)).filter(({ kind }) => kind === 'answer')).content)
      .toContain(JSON.stringify(first(asked.answers)))
  })

  it('goes back to the place when the plant is gone', async () => {
    const shipped = world.guide
    const view = await lettuceCase(world.desk)
    const hostNumbers = new Map([...shipped.hostNumbers].filter(([name]) => name !== 'lettuce'))
    world.guide = { ...shipped, hostNumbers }
    const after = await world.desk.showCase(view.link, null)
    expect(after.step).toEqual({ kind: 'place' })
    expect(after.place.hosts.map(({ host }) => host)).not.toContain('lettuce')
    expect(after.place.entries.map(({ host }) => host)).not.toContain('lettuce')
  })

  it('starts at the top of the tree when the node is gone', async () => {
    const shipped = world.guide
    const opened = await world.desk.openCase({ words: LETTUCE_WORDS }, null)
    const entry = first(opened.place.entries)
    await world.desk.settlePlace(opened.link, { revision: 0, host: entry.host, node: entry.node }, null)
    world.guide = {
      ...shipped,
      hosts: shipped.hosts.map((host) => (host.id !== entry.host ? host : {
        ...host,
        nodes: host.nodes.map((node) => (
          node.name === entry.node ? { ...node, name: `${node.name}-renamed` as typeof node.name } : node)),
      })),
    }
    const after = await world.desk.showCase(opened.link, null)
    expect(after.place).toMatchObject({ host: { host: entry.host }, node: null, complaint: null })
  })
})

describe('desk: calls and notes', () => {
  it('shows notes to the people of the helpline and not to the asker', async () => {
    const willow = await world.member('willow', 'volunteer')
    const { link } = await world.desk.openCase({ words: 'help' }, willow)
    await world.desk.noteCall(link, { revision: 0, text: 'sounds hurried' }, willow)
    expect((await world.desk.showCase(link, willow)).notes.map(({ text }) => text)).toEqual(['sounds hurried'])
    expect((await world.desk.showCase(link, null)).notes).toEqual([])
  })

  it('lists a person\'s own open calls, newest first, and closes them once', async () => {
    const willow = await world.member('willow', 'volunteer')
    const fern = await world.member('fern', 'volunteer')
    const one = await world.desk.openCase({ words: LETTUCE_WORDS }, willow)
    world.now = new Date(world.now.getTime() + 60_000)
    const two = await world.desk.openCase({ words: BERRY_WORDS }, willow)
    await world.desk.settlePlace(one.link, { revision: 0, host: 'lettuce', node: null }, willow)
    await world.desk.handOver(one.link, { revision: 1 }, willow)
    expect((await world.desk.listCalls(willow)).calls).toEqual([
      { link: two.link, words: BERRY_WORDS, hostName: null, openedAt: two.openedAt, stepKind: 'red-flag', handedOver: false },
      { link: one.link, words: LETTUCE_WORDS, hostName: 'Lettuce', openedAt: one.openedAt, stepKind: 'ask', handedOver: true },
    ])
    expect((await world.desk.listCalls(fern)).calls).toEqual([])
    await expect(world.desk.closeCall(one.link, fern)).rejects.toMatchObject({ code: 'CALL_NOT_FOUND' })
    expect((await world.desk.closeCall(one.link, willow)).calls.map(({ link }) => link)).toEqual([two.link])
    expect((await world.desk.closeCall(one.link, willow)).calls.map(({ link }) => link)).toEqual([two.link])
  })
})

describe('desk: a restart', () => {
  it('finds a case as it was', async () => {
    let view = await lettuceCase(world.desk)
    view = await world.desk.answerCheck(
      view.link, { revision: 1, check: askedCheck(view).id, answer: first(askedCheck(view).answers) }, null)
    view = await world.desk.handOver(view.link, { revision: 2, contact: { name: 'R. Ashdown' }, note: 'please ring' }, null)
    world = await world.reopen()
    expect(await world.desk.showCase(view.link, null)).toEqual(view)
  })
})
