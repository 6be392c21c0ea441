import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CaseView, type SettleTicket, TicketView } from '../../shared/index.js'
import { type Member } from '../../src/desk/index.js'
import { BERRY_WORDS, first, LETTUCE_WORDS, openWorld, type World } from './desk-world.js'

let world: World
let sedge: Member
let reed: Member
let alder: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
  reed = await world.member('reed', 'specialist')
  alder = await world.member('alder', 'administrator')
})
afterEach(() => world.close())

const later = (hours: number) => {
  world.now = new Date(world.now.getTime() + hours * 3_600_000)
}

/** A case of lettuce, placed and handed over. */
async function handedOver(words = LETTUCE_WORDS, contact: { name?: string; email?: string; phone?: string } = {}) {
  const { link } = await world.desk.openCase({ words }, null)
  await world.desk.settlePlace(link, { revision: 0, host: 'lettuce', node: null }, null)
  await world.desk.handOver(link, { revision: 1, contact }, null)
  const found = await world.desk.listTickets({ state: 'any' })
  const ticket = String(Math.max(...found.tickets.map((row) => Number(row.ticket))))
  return { link, ticket }
}

const MILDEW: SettleTicket = { text: 'Pick the spotted leaves off.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' } }
const UNKNOWN: SettleTicket = { text: 'We do not know.', outcome: { kind: 'not known' } }
const whats = (view: TicketView) => view.history.map(({ by, what }) => `${by ?? 'asker'}: ${what}`)

describe('desk: giving back and handing on', () => {
  it('lets a ticket wait again, from when it was opened', async () => {
    const { ticket } = await handedOver()
    const opened = world.now.toISOString()
    later(2)
    await world.desk.takeTicket(ticket, sedge)
    const back = await world.desk.giveBack(ticket, sedge)
    expect(back).toMatchObject({ state: 'waiting', takenBy: null, waitsSince: opened })
    expect(await world.desk.giveBack(ticket, sedge)).toEqual(back)
    expect(await world.desk.takeTicket(ticket, reed)).toMatchObject({ state: 'taken', takenBy: 'reed' })
    expect(whats(await world.desk.showTicket(ticket, reed)).slice(1)).toEqual(['sedge: Taken', 'sedge: Given back', 'reed: Taken'])
  })

  it('is for whoever has the ticket, and for an administrator', async () => {
    const { ticket } = await handedOver()
    await world.desk.takeTicket(ticket, sedge)
    for (const try_ of [() => world.desk.giveBack(ticket, reed), () => world.desk.handOn(ticket, { to: 'reed' }, reed)]) {
      await expect(try_()).rejects.toMatchObject({ code: 'TICKET_TAKEN', facts: { words: { who: 'sedge' } } })
    }
    expect(await world.desk.handOn(ticket, { to: 'reed' }, alder)).toMatchObject({ state: 'taken', takenBy: 'reed' })
    expect(await world.desk.giveBack(ticket, alder)).toMatchObject({ state: 'waiting' })
  })

  it('hands on a waiting ticket too, and only to somebody at the bench', async () => {
    await world.member('willow', 'volunteer')
    const { ticket } = await handedOver()
    for (const to of ['willow', 'nobody']) {
      await expect(world.desk.handOn(ticket, { to }, sedge)).rejects.toMatchObject({ code: 'UNKNOWN_COLLEAGUE' })
    }
    expect(await world.desk.handOn(ticket, { to: 'reed' }, sedge)).toMatchObject({ state: 'taken', takenBy: 'reed' })
    expect((await world.desk.listColleagues()).people.map(({ name }) => name)).toEqual(['alder', 'reed', 'sedge'])
  })
})

describe('desk: asking back', () => {
  it('opens the asker\'s case with the checks, and the answer lands on the ticket and moves the differential', async () => {
    const { link, ticket } = await handedOver()
    const before = await world.desk.takeTicket(ticket, sedge)
    const asked = await world.desk.askBack(ticket, { text: 'Please turn a leaf over.', checks: ['leaf-underside', 'leaf-underside'], photos: false }, sedge)
    expect(asked).toMatchObject({ state: 'asked back', takenBy: 'sedge', dueAt: null })

    const seen = await world.desk.showCase(link, null)
    expect(CaseView.parse(seen)).toEqual(seen)
    expect(seen.ticket).toMatchObject({
      state: 'asked back', askedBack: { text: 'Please turn a leaf over.', photos: false, answered: false, checks: [{ check: { id: 'leaf-underside' }, answer: null, fresh: false }] },
    })
    later(5)
    await world.desk.answerCheck(link, { revision: seen.revision, check: 'leaf-underside', answer: 'white or grey fuzz' }, null)
    const answered = await world.desk.showTicket(ticket, sedge)
    expect(TicketView.parse(answered)).toEqual(answered)
    expect(answered).toMatchObject({ state: 'answered by asker', takenBy: 'sedge', waitsSince: world.now.toISOString(), why: 'The asker answered 0 minutes ago' })
    expect(first(answered.questions)).toMatchObject({ by: 'sedge', answered: true, checks: [{ answer: 'white or grey fuzz', fresh: true }] })
    const mildew = (view: TicketView) => view.differential.find(({ problem }) => problem === 'lettuce-downy-mildew')?.probability ?? 0
    expect(mildew(answered)).toBeGreaterThan(mildew(before) + 0.1)
    expect(whats(answered).slice(2)).toEqual(['sedge: Asked back: one check', 'asker: The asker answered a check'])
  })

  it('is answered by words or a photo as well', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.askBack(ticket, { text: '', checks: [], photos: true }, sedge)
    await world.desk.addWords(link, { revision: 2, words: 'my camera is broken' }, null)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'answered by asker', questions: [{ photos: true, answered: true }] })
  })

  it('goes to and fro, and can be settled at any time', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.askBack(ticket, { text: 'one?', checks: [], photos: false }, sedge)
    await world.desk.addWords(link, { revision: 2, words: 'one' }, null)
    await world.desk.askBack(ticket, { text: 'two?', checks: [], photos: false }, sedge)
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ state: 'asked back', askedBack: { text: 'two?', answered: false } })
    const settled = await world.desk.settleTicket(ticket, UNKNOWN, sedge)
    expect(settled.questions.map(({ text }) => text)).toEqual(['one?', 'two?'])
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ state: 'settled', askedBack: null })
  })

  it('is not answered by the specialist who fills in a check, but by the volunteer on the telephone', async () => {
    const willow = await world.member('willow', 'volunteer')
    const { link, ticket } = await handedOver()
    await world.desk.askBack(ticket, { text: '', checks: ['leaf-underside'], photos: false }, sedge)
    await world.desk.answerCheck(link, { revision: 2, check: 'leaf-underside', answer: 'not sure' }, sedge)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'asked back' })
    await world.desk.answerCheck(link, { revision: 3, check: 'leaf-underside', answer: 'white or grey fuzz' }, willow)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'answered by asker' })
  })

  it('is answered before the plant is settled too, though no other check is', async () => {
    const { link } = await world.desk.openCase({ words: 'it is poorly' }, null)
    await world.desk.handOver(link, { revision: 0 }, null)
    const { ticket } = first((await world.desk.listTickets({ state: 'waiting' })).tickets)
    await world.desk.askBack(ticket, { text: '', checks: ['leaf-underside'], photos: false }, sedge)
    await expect(world.desk.answerCheck(link, { revision: 1, check: 'recent-weather', answer: 'not sure' }, null)).rejects.toMatchObject({ code: 'PLACE_FIRST' })
    await world.desk.answerCheck(link, { revision: 1, check: 'leaf-underside', answer: 'white or grey fuzz' }, null)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'answered by asker', questions: [{ checks: [{ answer: 'white or grey fuzz', fresh: true }] }] })
  })

  it('asks the same thing once, and nothing that the guide does not know', async () => {
    const { ticket } = await handedOver()
    const body = { text: 'Where does it stand?', checks: ['leaf-underside'], photos: true }
    const asked = await world.desk.askBack(ticket, body, sedge)
    expect(await world.desk.askBack(ticket, body, sedge)).toEqual(asked)
    await expect(world.desk.askBack(ticket, { ...body, checks: ['tea-leaves'] }, sedge)).rejects.toMatchObject({ code: 'UNKNOWN_CHECK' })
    await expect(world.desk.askBack(ticket, { ...body, text: 'x' }, reed)).rejects.toMatchObject({ code: 'TICKET_TAKEN' })
  })
})

describe('desk: laboratory samples', () => {
  const SAMPLE = { number: 'LV-0417', packed: 'three leaves in a paper bag' }

  it('are sent with a number and come back with a result', async () => {
    const { link, ticket } = await handedOver()
    const sent = await world.desk.sendSample(ticket, SAMPLE, sedge)
    expect(sent).toMatchObject({ state: 'sent as a sample', dueAt: null, samples: [{ ...SAMPLE, by: 'sedge', result: null }] })
    expect(await world.desk.sendSample(ticket, SAMPLE, sedge)).toEqual(sent)
    expect((await world.desk.showCase(link, null)).ticket?.sample).toEqual({ ...SAMPLE, at: world.now.toISOString() })
    later(70)
    const back = await world.desk.recordResult(ticket, { number: SAMPLE.number, text: 'Bremia lactucae found' }, reed)
    expect(back).toMatchObject({ state: 'taken', takenBy: 'sedge', waitsSince: world.now.toISOString(), samples: [{ result: { text: 'Bremia lactucae found', by: 'reed' } }] })
    expect(JSON.stringify(await world.desk.showCase(link, null))).not.toContain('Bremia lactucae found')
  })

  it('refuse a number that is not the ticket\'s, and one that is there already with something else in it', async () => {
    const { ticket } = await handedOver()
    await world.desk.sendSample(ticket, SAMPLE, sedge)
    await expect(world.desk.recordResult(ticket, { number: 'LV-1', text: 'x' }, sedge)).rejects.toMatchObject({ code: 'SAMPLE_NOT_FOUND' })
    await expect(world.desk.sendSample(ticket, { ...SAMPLE, packed: 'soil' }, sedge)).rejects.toMatchObject({ code: 'SAMPLE_KNOWN' })
  })

  it('may bring a result after settling, which leaves the answer as it is until it is amended', async () => {
    const { ticket } = await handedOver()
    await world.desk.sendSample(ticket, SAMPLE, sedge)
    await world.desk.settleTicket(ticket, UNKNOWN, sedge)
    expect(await world.desk.recordResult(ticket, { number: SAMPLE.number, text: 'mildew' }, sedge)).toMatchObject({ state: 'settled', samples: [{ result: { text: 'mildew' } }] })
    expect((await world.desk.amendTicket(ticket, MILDEW, sedge)).replies.map(({ text, stands }) => [text, stands])).toEqual([[UNKNOWN.text, false], [MILDEW.text, true]])
  })
})

describe('desk: amending and opening again', () => {
  it('keeps every answer visible, to the asker too', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.settleTicket(ticket, UNKNOWN, sedge)
    later(1)
    const amended = await world.desk.amendTicket(ticket, MILDEW, reed)
    expect(amended).toMatchObject({ state: 'settled', takenBy: 'sedge' })
    expect(await world.desk.amendTicket(ticket, MILDEW, reed)).toEqual(amended)
    expect(amended.replies.map(({ by, outcome, stands }) => [by, outcome, stands])).toEqual([['sedge', 'not known', false], ['reed', 'problem', true]])
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({
      reply: { text: MILDEW.text, at: world.now.toISOString() }, earlierReplies: [{ text: UNKNOWN.text }],
    })
    expect(whats(amended).at(-1)).toBe('reed: The answer was changed')
  })

  it('takes an answer back, and the asker sees none until there is another', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.settleTicket(ticket, UNKNOWN, sedge)
    const opened = await world.desk.reopenTicket(ticket, reed)
    expect(opened).toMatchObject({ state: 'taken', takenBy: 'reed', replies: [{ text: UNKNOWN.text, stands: false }] })
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ state: 'taken', reply: null, earlierReplies: [] })
    await world.desk.settleTicket(ticket, MILDEW, reed)
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ reply: { text: MILDEW.text }, earlierReplies: [{ text: UNKNOWN.text }] })
  })

  it('waits again, for everybody, when the asker then tells of a danger, and not for anything less', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.settleTicket(ticket, UNKNOWN, sedge)
    const calm = await world.desk.addWords(link, { revision: (await world.desk.showCase(link, null)).revision, words: 'the heads look bad too' }, null)
    expect(calm.ticket).toMatchObject({ state: 'settled', reply: { text: UNKNOWN.text } })
    const asked = await world.desk.addWords(link, { revision: calm.revision, words: 'is lettuce sap poisonous to my cat' }, null)
    expect(asked.cards.map(({ level }) => level)).toEqual(['caution'])
    expect(asked.ticket).toMatchObject({ state: 'settled', reply: { text: UNKNOWN.text } })
    const told = await world.desk.addWords(link, { revision: asked.revision, words: BERRY_WORDS }, null)
    expect(told.ticket).toMatchObject({ state: 'waiting', reply: null })
    const view = await world.desk.showTicket(ticket, reed)
    expect(view).toMatchObject({ state: 'waiting', takenBy: null, replies: [{ text: UNKNOWN.text, stands: false }] })
    expect((await world.desk.listTickets({ state: 'waiting' })).tickets.map((row) => row.ticket)).toEqual([view.ticket])
    // The next danger is a new one, although the ticket was as urgent as can be already.
    await world.desk.settleTicket(ticket, UNKNOWN, reed)
    const again = await world.desk.addWords(link, { revision: told.revision, words: 'and now the spray went into her eyes' }, null)
    expect(again.ticket).toMatchObject({ state: 'waiting', reply: null })
  })

  it('is for settled tickets only', async () => {
    const { ticket } = await handedOver()
    await expect(world.desk.amendTicket(ticket, MILDEW, sedge)).rejects.toMatchObject({ code: 'TICKET_ELSEWHERE' })
    await expect(world.desk.reopenTicket(ticket, sedge)).rejects.toMatchObject({ code: 'TICKET_ELSEWHERE' })
  })
})

describe('desk: merging and linking', () => {
  it('closes a repeat into another ticket, whose answer its asker is shown', async () => {
    const one = await handedOver()
    const two = await handedOver(BERRY_WORDS)
    const merged = await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    expect(merged).toMatchObject({ state: 'merged', mergedInto: one.ticket })
    expect(await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)).toEqual(merged)
    expect(await world.desk.showTicket(one.ticket, sedge)).toMatchObject({ urgent: true, why: expect.stringMatching(/^Red flag/), merged: [{ ticket: two.ticket }] })
    expect((await world.desk.listTickets({ state: 'open' })).tickets.map(({ ticket }) => ticket)).toEqual([one.ticket])
    await world.desk.settleTicket(one.ticket, MILDEW, sedge)
    expect((await world.desk.showCase(two.link, null)).ticket).toMatchObject({ state: 'settled', reply: { text: MILDEW.text } })
  })

  it('waits again, or becomes urgent, for every new danger told of in a repeat', async () => {
    const one = await handedOver()
    const two = await handedOver('another question')
    await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    const tell = async (words: string) => {
      const { revision } = await world.desk.showCase(two.link, null)
      later(1)
      return world.desk.addWords(two.link, { revision, words }, null)
    }
    await tell('the heads look bad too')
    expect(await world.desk.showTicket(one.ticket, sedge)).toMatchObject({ urgent: false })
    await tell(BERRY_WORDS)
    const raised = await world.desk.showTicket(one.ticket, sedge)
    expect(raised).toMatchObject({ state: 'waiting', urgent: true, why: expect.stringMatching(new RegExp(`^Red flag: .* \\(in ticket ${two.ticket}, merged into this one\\)$`)) })
    expect((await world.desk.listTickets({ state: 'open' })).tickets.map(({ ticket }) => ticket)).toEqual([one.ticket])
    // However urgent it is already, whoever has it is told: they do not look into the repeat.
    await world.desk.takeTicket(one.ticket, sedge)
    await tell('the spray went into her eyes')
    expect(whats(await world.desk.showTicket(one.ticket, sedge)).filter((what) => what.includes('Became urgent'))).toHaveLength(2)

    await world.desk.settleTicket(one.ticket, MILDEW, sedge)
    await tell('so what now')
    expect(await world.desk.showTicket(one.ticket, sedge)).toMatchObject({ state: 'settled' })
    const told = await tell('and the sap has burnt my hands, they are blistered')
    expect(told.cards.length).toBeGreaterThan(2)
    expect(told.ticket).toMatchObject({ state: 'waiting', reply: null })
    expect(await world.desk.showTicket(one.ticket, reed)).toMatchObject({ state: 'waiting', takenBy: null, replies: [{ stands: false }] })
    expect(await world.desk.showTicket(two.ticket, reed)).toMatchObject({ state: 'merged' })
    expect(await world.desk.unmergeTicket(two.ticket, reed)).toMatchObject({ state: 'waiting', urgent: true })
  })

  it('shows the asker of a repeat nothing of the other case but its answer', async () => {
    const one = await handedOver()
    const two = await handedOver('another question')
    await world.desk.askBack(one.ticket, { text: 'Is it the bed by the red barn?', checks: [], photos: false }, sedge)
    await world.desk.sendSample(one.ticket, { number: '7', packed: 'leaves from the red barn' }, sedge)
    await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    const seen = JSON.stringify(await world.desk.showCase(two.link, null))
    expect(seen).not.toContain('red barn')
    expect(seen).not.toContain(one.link)
  })

  it('is taken apart again', async () => {
    const one = await handedOver()
    const two = await handedOver()
    await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    expect(await world.desk.unmergeTicket(two.ticket, reed)).toMatchObject({ state: 'waiting', mergedInto: null })
    expect((await world.desk.showTicket(one.ticket, reed)).merged).toEqual([])
  })

  it('refuses itself, a ticket that is merged itself, and one that has repeats', async () => {
    const [one, two, three] = [await handedOver(), await handedOver(), await handedOver()]
    await expect(world.desk.mergeTicket(one.ticket, { ticket: one.ticket }, sedge)).rejects.toMatchObject({ code: 'TICKET_ITSELF' })
    await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    await expect(world.desk.mergeTicket(three.ticket, { ticket: two.ticket }, sedge)).rejects.toMatchObject({ code: 'TICKET_MERGED', facts: { words: { into: one.ticket } } })
    await expect(world.desk.mergeTicket(one.ticket, { ticket: three.ticket }, sedge)).rejects.toMatchObject({ code: 'TICKET_HAS_REPEATS' })
    await expect(world.desk.settleTicket(two.ticket, MILDEW, sedge)).rejects.toMatchObject({ code: 'TICKET_MERGED' })
  })

  it('finds the same asker by e-mail or telephone however they are written', async () => {
    const one = await handedOver('first', { email: 'Ashdown@Larkmoor.example' })
    const two = await handedOver('second', { email: 'ashdown@larkmoor.example', phone: '555-0190' })
    const three = await handedOver('third', { phone: '555 0190' })
    await handedOver('somebody else', { email: 'rowan@larkmoor.example' })
    expect((await world.desk.showTicket(two.ticket, sedge)).sameAsker.map(({ ticket }) => ticket)).toEqual([one.ticket, three.ticket])
    expect((await world.desk.showTicket(one.ticket, sedge)).sameAsker.map(({ ticket }) => ticket)).toEqual([two.ticket])
  })

  it('links two tickets both ways, once, and takes it back', async () => {
    const [one, two] = [await handedOver(), await handedOver()]
    await world.desk.linkTicket(two.ticket, { ticket: one.ticket }, reed)
    await world.desk.linkTicket(one.ticket, { ticket: two.ticket }, reed)
    for (const [a, b] of [[one, two], [two, one]] as const) {
      const view = await world.desk.showTicket(a.ticket, sedge)
      expect(view.related.map(({ ticket }) => ticket)).toEqual([b.ticket])
      expect(whats(view).slice(1)).toEqual([`reed: Linked with ticket ${b.ticket}`])
    }
    expect((await world.desk.unlinkTicket(one.ticket, { ticket: two.ticket }, sedge)).related).toEqual([])
  })
})

describe('desk: notes for colleagues', () => {
  it('are seen at the bench and never by the asker', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.noteForColleagues(ticket, { text: 'He rang twice, rather cross.' }, sedge)
    const view = await world.desk.noteForColleagues(ticket, { text: 'He rang twice, rather cross.' }, sedge)
    expect(view.colleagueNotes).toEqual([{ text: 'He rang twice, rather cross.', by: 'sedge', at: world.now.toISOString() }])
    const willow = await world.member('willow', 'volunteer')
    for (const who of [null, willow]) expect(JSON.stringify(await world.desk.showCase(link, who))).not.toContain('cross')
  })
})

describe('desk: searching tickets', () => {
  const found = async (search: Parameters<World['desk']['listTickets']>[0]) => (await world.desk.listTickets(search)).tickets.map(({ ticket }) => ticket)

  it('finds by words, number, plant, problem, district, holder and day', async () => {
    const one = await handedOver('Brown ROT on my Lettuce, 100% of it')
    later(48)
    const { link } = await world.desk.openCase({ words: 'speckled leaves', district: 'holt-fen' }, null)
    await world.desk.handOver(link, { revision: 0, note: 'by the greenhouse' }, null)
    const two = first(await found({ state: 'any', words: 'speckled' }))
    await world.desk.settleTicket(one.ticket, MILDEW, reed)

    expect(await found({ state: 'any', words: 'rot brown' })).toEqual([one.ticket])
    expect(await found({ state: 'any', words: '100%' })).toEqual([one.ticket])
    expect(await found({ state: 'any', words: '1_0%' })).toEqual([])
    expect(await found({ state: 'any', words: 'GREENHOUSE' })).toEqual([two])
    expect(await found({ state: 'any', words: 'downy mildew' })).toEqual([one.ticket])
    expect(await found({ state: 'any', words: two })).toContain(two)
    expect(await found({ state: 'any', host: 'lettuce' })).toEqual([one.ticket])
    expect(await found({ state: 'any', problem: 'lettuce-downy-mildew' })).toEqual([one.ticket])
    expect(await found({ state: 'any', district: 'holt-fen' })).toEqual([two])
    expect(await found({ state: 'any', with: 'reed' })).toEqual([one.ticket])
    expect(await found({ state: 'any', from: '2026-05-16' })).toEqual([two])
    expect(await found({ state: 'any', until: '2026-05-15' })).toEqual([one.ticket])
    expect(await found({ state: 'any', from: '2026-05-16', words: 'rot' })).toEqual([])
    expect(await found({ state: 'open' })).toEqual([two])
  })

  it('finds by what the asker said later', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.addWords(link, { revision: 2, words: 'it stands beside the raspberries' }, null)
    expect(await found({ state: 'any', words: 'raspberries' })).toEqual([ticket])
  })
})

describe('desk: need', () => {
  it('ranks what has waited for us, not what waits for the asker, and measures it against the region\'s hours', async () => {
    const one = await handedOver('first')
    later(1)
    const two = await handedOver('second')
    later(1)
    await world.desk.askBack(one.ticket, { text: 'where?', checks: [], photos: false }, sedge)
    later(50)
    await world.desk.addWords(one.link, { revision: 2, words: 'in the bed' }, null)
    const rows = (await world.desk.listTickets({ state: 'open' })).tickets
    expect(rows.map(({ ticket, late }) => [ticket, late])).toEqual([[two.ticket, true], [one.ticket, false]])
    expect(rows.map(({ dueAt }) => dueAt)).toEqual(['2026-05-16T13:00:00.000Z', '2026-05-18T16:00:00.000Z'])
  })

  it('gives urgent ones the shorter time', async () => {
    await handedOver(BERRY_WORDS)
    const { urgentWithinHours } = world.guide.region.targets
    later(urgentWithinHours)
    expect(first((await world.desk.listTickets({ state: 'waiting' })).tickets)).toMatchObject({ urgent: true, late: false })
    later(1)
    expect(first((await world.desk.listTickets({ state: 'waiting' })).tickets)).toMatchObject({ late: true })
  })
})

describe('desk: the moves of a ticket', () => {
  it('never lose a line of history nor change one, in whatever order they are tried', async () => {
    const { link, ticket } = await handedOver()
    const second = await handedOver('the other one')
    const tries: Record<string, (who: Member) => Promise<unknown>> = {
      take: (who) => world.desk.takeTicket(ticket, who), back: (who) => world.desk.giveBack(ticket, who),
      on: (who) => world.desk.handOn(ticket, { to: 'reed' }, who), ask: (who) => world.desk.askBack(ticket, { text: 'more?', checks: [], photos: false }, who),
      settle: (who) => world.desk.settleTicket(ticket, MILDEW, who), amend: (who) => world.desk.amendTicket(ticket, UNKNOWN, who),
      reopen: (who) => world.desk.reopenTicket(ticket, who), merge: (who) => world.desk.mergeTicket(ticket, { ticket: second.ticket }, who),
      apart: (who) => world.desk.unmergeTicket(ticket, who), sample: (who) => world.desk.sendSample(ticket, { number: '1', packed: 'leaf' }, who),
      result: (who) => world.desk.recordResult(ticket, { number: '1', text: 'nothing' }, who),
      words: async () => world.desk.addWords(link, { revision: (await world.desk.showCase(link, null)).revision, words: 'more' }, null),
    }
    await fc.assert(fc.asyncProperty(
      fc.array(fc.tuple(fc.constantFrom(...Object.keys(tries)), fc.constantFrom('sedge', 'reed', 'alder')), { minLength: 3, maxLength: 8 }),
      async (steps) => {
        let before = (await world.desk.showTicket(ticket, sedge)).history
        for (const [name, by] of steps) {
          const who = { sedge, reed, alder }[by] ?? sedge
          const outcome = await tries[name]?.(who).then(() => 'done', (fault: { code?: string }) => fault.code ?? String(fault))
          const { history, replies, state } = await world.desk.showTicket(ticket, sedge)
          expect(history.slice(0, before.length)).toEqual(before)
          if (outcome !== 'done') {
            expect(outcome, `${name} by ${by}`).toMatch(/^(TICKET_|SAMPLE_|CASE_FULL)/)
            expect(history).toHaveLength(before.length)
          }
          expect(replies.filter(({ stands }) => stands)).toHaveLength(state === 'settled' ? 1 : 0)
          before = history
        }
      },
    ), { numRuns: 8 })
  }, 240_000)
})
