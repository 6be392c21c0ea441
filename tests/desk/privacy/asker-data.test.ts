import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sql } from 'kysely'
import { eraseAsker, exportAsker, type Member } from '../../../src/desk/index.js'
import { randomBytes } from 'node:crypto'
import { openWorld, testKeys, type World } from '../desk-world.js'

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

const CONTACT = { name: 'Rosalind Ashdown', email: 'ashdown@larkmoor.example', phone: '555-0190', callTime: 'after six' }
const room = () => ({ db: world.store.db, keys: testKeys(), now: () => world.now, randomBytes: (count: number) => randomBytes(count) })
const days = (count: number) => {
  world.now = new Date(world.now.getTime() + count * 24 * 3_600_000)
}

async function handedOver(contact = CONTACT) {
  const { link } = await world.desk.openCase({ words: 'quibbling lettuce', district: 'eastmere' }, null)
  await world.desk.settlePlace(link, { revision: 0, host: 'lettuce', node: null }, null)
  await world.desk.answerCheck(link, { revision: 1, check: 'leaf-underside', answer: 'white or grey fuzz' }, null)
  await world.desk.handOver(link, { revision: 2, contact, note: 'ring the quibble bell' }, null)
  const ticket = (await world.desk.listTickets({ state: 'waiting' })).tickets.at(-1)?.ticket ?? 'none'
  return { link, ticket }
}

/** Every row of every table, as text. */
async function wholeStore(): Promise<string> {
  const tables = await world.store.db.introspection.getTables()
  const rows = await Promise.all(tables.map(({ name }) => sql`select * from ${sql.table(name)}`.execute(world.store.db)))
  return JSON.stringify(rows.map((result) => result.rows))
}

describe('contact details', { timeout: 90_000 }, () => {
  it('lie in no table in clear', async () => {
    const { ticket } = await handedOver()
    expect(await world.desk.readContact(ticket, sedge)).toMatchObject({ contact: CONTACT })
    const kept = await wholeStore()
    for (const secret of ['Rosalind', 'Ashdown', 'ashdown', '0190']) expect(kept).not.toContain(secret)
  })

  it('leave a line with every reading, and none when the ticket alone is looked at', async () => {
    const reed = await world.member('reed', 'specialist')
    const { ticket } = await handedOver()
    await world.desk.showTicket(ticket, sedge)
    expect((await world.desk.readContact(ticket, sedge)).readBefore).toEqual([])
    days(1)
    expect((await world.desk.readContact(ticket, reed)).readBefore.map(({ by }) => by)).toEqual(['sedge'])
    expect((await world.desk.readContact(ticket, sedge)).readBefore.map(({ by, at }) => [by, at.slice(0, 10)])).toEqual([['sedge', '2026-05-14'], ['reed', '2026-05-15']])
  })

  it('are erased so many days after settling, by the region or by the administrators, and not before', async () => {
    const alder = await world.member('alder', 'administrator')
    const waiting = await handedOver()
    const { link, ticket } = await handedOver()
    await world.desk.settleTicket(ticket, { text: 'Mildew.', outcome: { kind: 'not known' } }, sedge)
    days(world.guide.region.targets.eraseContactAfterDays)
    expect(await world.desk.eraseDueContacts()).toBe(0)
    days(0.01)
    expect(await world.desk.eraseDueContacts()).toBe(1)
    expect(await world.desk.eraseDueContacts()).toBe(0)
    expect(await world.desk.readContact(ticket, sedge)).toEqual({ contact: null, readBefore: [] })
    expect((await world.desk.showCase(link, null)).ticket).toMatchObject({ contactGiven: false, reply: { text: 'Mildew.' } })
    expect((await world.desk.showTicket(ticket, sedge)).history.at(-1)).toMatchObject({ by: null, what: 'Contact details erased' })
    expect((await world.desk.showTicket(waiting.ticket, sedge)).contactGiven).toBe(true)

    await world.desk.decideSettings({ codesFor: [], eraseContactAfterDays: 2 }, alder)
    await world.desk.settleTicket(waiting.ticket, { text: 'x', outcome: { kind: 'not known' } }, sedge)
    days(2.01)
    expect(await world.desk.eraseDueContacts()).toBe(1)
  })

  it('of a repeat go with the ticket that it was merged into', async () => {
    const one = await handedOver()
    const two = await handedOver()
    await world.desk.mergeTicket(two.ticket, { ticket: one.ticket }, sedge)
    await world.desk.settleTicket(one.ticket, { text: 'x', outcome: { kind: 'not known' } }, sedge)
    days(31)
    expect(await world.desk.eraseDueContacts()).toBe(2)
  })

  it('from before there was a key are sealed at the next start', async () => {
    const { ticket } = await handedOver({ ...CONTACT, name: 'nobody' })
    await world.store.db.deleteFrom('contact_sealed').execute()
    await world.store.db.insertInto('contact').values({ ticket_id: Number(ticket), name: CONTACT.name, email: null, phone: CONTACT.phone }).execute()
    await world.desk.sealAnew()
    expect(await wholeStore()).not.toContain('Rosalind')
    expect((await world.desk.readContact(ticket, sedge)).contact).toEqual({ name: CONTACT.name, phone: CONTACT.phone })
  })
})

describe('everything about one asker', { timeout: 90_000 }, () => {
  it('is given out whole', async () => {
    const { link, ticket } = await handedOver()
    await world.desk.readContact(ticket, sedge)
    await world.desk.askBack(ticket, { text: 'Where?', checks: [], photos: true }, sedge)
    await world.desk.settleTicket(ticket, {
      text: 'Mildew, Mrs A.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' }, casebook: { words: 'quibbling leaves' }, suggest: ['entry phrase'],
    }, sedge)
    await world.desk.noteForColleagues(ticket, { text: 'a regular' }, sedge)
    expect(await exportAsker(room(), link)).toMatchObject({
      link, words: ['quibbling lettuce'], district: 'eastmere', evidence: { findings: [{ check: 'leaf-underside', answer: 'white or grey fuzz' }] },
      ticket: {
        contact: CONTACT, note: 'ring the quibble bell', contactReadBy: [{ by: 'sedge' }], questions: [{ text: 'Where?' }],
        replies: [{ by: 'sedge', text: 'Mildew, Mrs A.' }], colleagueNotes: [{ text: 'a regular' }],
        casebook: [{ by: 'sedge', words: 'quibbling leaves', case: { words: 'quibbling leaves', host: 'lettuce' } }],
        suggestions: [{ by: 'sedge', kind: 'entry phrase', suggestion: { phrase: 'quibbling leaves' } }],
      },
    })
    expect(await exportAsker(room(), 'x'.repeat(32))).toBeNull()
  })

  it('is erased whole, and what was seen on the plant stays with nobody to whom it belongs', async () => {
    const { link, ticket } = await handedOver()
    const other = await handedOver({ ...CONTACT, email: 'rowan@larkmoor.example' })
    await world.desk.addWords(link, { revision: 3, words: 'quibble: more of it' }, null)
    await world.desk.noteCall(link, { revision: 4, text: 'quibbles on the telephone' }, sedge)
    await world.desk.askBack(ticket, { text: 'Where is the quibble?', checks: [], photos: false }, sedge)
    await world.desk.sendSample(ticket, { number: '7', packed: 'a quibble' }, sedge)
    await world.desk.recordResult(ticket, { number: '7', text: 'quibble found' }, sedge)
    await world.desk.noteForColleagues(ticket, { text: 'quibbler' }, sedge)
    await world.desk.settleTicket(ticket, {
      text: 'Dear quibbler, mildew.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' }, casebook: { words: 'quibble' }, suggest: ['entry phrase', 'deciding check'],
    }, sedge)

    expect(await world.store.db.selectFrom('tree_suggestion').select('kind').execute()).not.toEqual([])
    expect(await eraseAsker(room(), link)).toBe(true)
    for (const table of ['casebook_case', 'tree_suggestion'] as const) {
      expect(await world.store.db.selectFrom(table).selectAll().where('ticket_id', '=', Number(ticket)).execute(), table).toEqual([])
    }
    expect(await eraseAsker(room(), link)).toBe(false)
    await expect(world.desk.showCase(link, null)).rejects.toMatchObject({ code: 'CASE_NOT_FOUND' })
    // Of the other asker the very same words are kept, once each.
    await eraseAsker(room(), other.link)
    expect(await wholeStore()).not.toMatch(/quibbl|ashdown|rowan/i)

    const left = await world.desk.showTicket(ticket, sedge)
    expect(left).toMatchObject({ state: 'settled', contactGiven: false, note: null, case: { words: ['(erased)'], lines: [{ answer: 'white or grey fuzz' }] }, replies: [{ text: '(erased)', problem: 'lettuce-downy-mildew' }] })
    expect(left.history.map(({ kind }) => kind)).toContain('settled')
    expect(left.history.at(-1)?.kind).toBe('erased')
    expect((await world.desk.listTickets({ state: 'any' })).tickets).toHaveLength(2)
  })

  it('is erased from an open ticket too, which then waits for nobody', async () => {
    const { link, ticket } = await handedOver()
    await eraseAsker(room(), link)
    expect(await world.desk.showTicket(ticket, sedge)).toMatchObject({ state: 'settled', replies: [] })
    expect((await world.desk.listTickets({ state: 'open' })).tickets).toEqual([])
  })
})
