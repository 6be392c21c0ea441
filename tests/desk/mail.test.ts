import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { enqueueMail, type MailOrder } from '../../src/desk/mail/mail-order.js'
import { openMailer } from '../../src/mail/index.js'
import { type Db, giveUpMail, markMailSent, type OutboxRow } from '../../src/store/index.js'
import { type MailServer, openMailServer } from '../mail/mail-server.js'
import { first, NOON, openWorld, type World } from './desk-world.js'

const ASHDOWN = 'ashdown@larkmoor.example'
const DUTY = 'duty@larkmoor.example'
const URL = 'https://plants.example'

let server: MailServer
let world: World
beforeEach(async () => {
  server = await openMailServer()
  world = await openWorld(undefined, placeOf(server))
})
afterEach(async () => {
  await world.close()
  await server.close()
})

const placeOf = ({ url }: MailServer) => ({ mailer: openMailer({ smtpUrl: url, from: 'helpline@plants.example' }), publicUrl: URL })
const later = (ms: number) => { world.now = new Date(world.now.getTime() + ms) }
const rows = (): Promise<OutboxRow[]> => world.store.db.selectFrom('outbox').selectAll().orderBy('id').execute()
const HOUR = 3_600_000

async function handedOver(words = 'my lettuce is yellow', email: string | null = ASHDOWN): Promise<string> {
  const { link } = await world.desk.openCase({ words }, null)
  await world.desk.handOver(link, { revision: 0, ...(email === null ? {} : { contact: { name: 'Rosalind Ashdown', email } }) }, null)
  return link
}
const order = (one: MailOrder, db: Db = world.store.db) => enqueueMail({ mail: placeOf(server), now: () => world.now }, db, one)

describe('the letters of a ticket', () => {
  it('tells the asker that it arrived, with the private link, whom to call in danger, and no personal data in the subject', async () => {
    const link = await handedOver()
    await world.desk.sendDueMail()
    const got = first(server.letters)
    expect(got).toMatchObject({
      to: { value: [{ address: ASHDOWN }] }, subject: 'Larkmoor Plant Helpline: your question has arrived (ticket 1)',
    })
    for (const body of [got.text ?? '', String(got.html)]) {
      expect(body).toContain(`${URL}/case#${link}`)
      expect(body).toContain('within 48 hours')
      expect(body).toContain('Emergency services 555-0100, Larkmoor poison line 555-0111')
      expect(body).not.toContain('Rosalind')
    }
  })

  it('brings the answer itself, with the cautions', async () => {
    await handedOver()
    const sedge = await world.member('sedge', 'specialist')
    await world.desk.settleTicket('1', { text: 'Rinse the <aphids> off.\nThat is all.', outcome: { kind: 'not known' } }, sedge)
    await world.desk.sendDueMail()
    const got = server.letters[1]
    expect(got?.subject).toBe('Larkmoor Plant Helpline: the answer to your question (ticket 1)')
    expect(got?.text).toContain('    Rinse the <aphids> off.\n    That is all.')
    expect(String(got?.html)).toContain('Rinse the &lt;aphids&gt; off.')
    expect(got?.text).toContain('the label is the law')
    expect(got?.text).not.toMatch(/safe to eat/i)
  })

  it('tells whoever is on duty of an urgent ticket, once, without a word of the asker\'s', async () => {
    await handedOver('my toddler ate some berries off the bush by the gate', null)
    await world.desk.sendDueMail()
    expect(server.letters.map(({ to, subject }) => [to, subject])).toMatchObject([[{ value: [{ address: DUTY }] }, 'Urgent: ticket 1']])
    const text = first(server.letters).text ?? ''
    expect(text).toContain('Red flag')
    expect(text).toContain(`${URL}/bench`)
    expect(text).not.toMatch(/toddler|gate/)
  })

  it('tells the asker each time that the specialist asks back, and of an answer that was changed', async () => {
    const link = await handedOver()
    const sedge = await world.member('sedge', 'specialist')
    await world.desk.askBack('1', { text: 'Which side?', checks: [], photos: true }, sedge)
    await world.desk.askBack('1', { text: 'Which side?', checks: [], photos: true }, sedge)
    await world.desk.askBack('1', { text: 'And the roots?', checks: [], photos: true }, sedge)
    await world.desk.settleTicket('1', { text: 'One.', outcome: { kind: 'not known' } }, sedge)
    await world.desk.amendTicket('1', { text: 'Two.', outcome: { kind: 'not known' } }, sedge)
    await world.desk.sendDueMail()
    expect(server.letters.map(({ subject = '' }) => subject.replace('Larkmoor Plant Helpline: ', ''))).toEqual([
      'your question has arrived (ticket 1)', 'one more thing to look at (ticket 1)', 'one more thing to look at (ticket 1)',
      'the answer to your question (ticket 1)', 'the answer to your question (ticket 1)',
    ])
    expect(server.letters[1]?.text).toContain(`${URL}/case#${link}`)
    expect(server.letters[4]?.text).toContain('has changed the answer to your question')
    expect(server.letters[4]?.text).toContain('    Two.')
  })

  it('tells whoever is on duty when a ticket becomes urgent later', async () => {
    const link = await handedOver('my lettuce is yellow', null)
    await world.desk.addWords(link, { revision: 1, words: 'my toddler ate some berries off the bush by the gate' }, null)
    await world.desk.sendDueMail()
    expect(server.letters.map(({ subject }) => subject)).toEqual(['Urgent: ticket 1'])
  })

  it('goes to nobody who left no mail address', async () => {
    await handedOver('my lettuce is yellow', null)
    await world.desk.sendDueMail()
    expect([server.letters, await rows()]).toEqual([[], []])
  })

  it('is not sent when the address was erased in the meantime', async () => {
    await handedOver()
    await world.store.db.deleteFrom('contact_sealed').execute()
    await world.desk.sendDueMail()
    expect(server.letters).toEqual([])
    expect((await rows()).map(({ state }) => state)).toEqual(['dropped'])
  })
})

describe('the outbox', () => {
  it('holds no address, no name and no words', async () => {
    await handedOver('my speckled lettuce')
    const sedge = await world.member('sedge', 'specialist')
    await world.desk.settleTicket('1', { text: 'Speckled is normal.', outcome: { kind: 'not known' } }, sedge)
    expect(await rows()).toHaveLength(2)
    expect(JSON.stringify(await rows())).not.toMatch(/ashdown|speckled/i)
  })

  it('keeps the letter together with the change that causes it, or neither', async () => {
    await handedOver()
    const before = await rows()
    await expect(world.store.db.transaction().execute(async (db) => {
      await order({ kind: 'asked back', ticket: 1, turn: '1' }, db)
      throw new Error('the change failed')
    })).rejects.toThrow('the change failed')
    expect(await rows()).toEqual(before)
  })

  it('takes the same order once, even after it was sent', async () => {
    await handedOver()
    await order({ kind: 'received', ticket: 1 })
    await world.desk.sendDueMail()
    await order({ kind: 'received', ticket: 1 })
    await world.desk.sendDueMail()
    expect(server.letters).toHaveLength(1)
  })

  it('stays empty where the service sends no mail', async () => {
    await world.close()
    world = await openWorld()
    await handedOver()
    expect(await rows()).toEqual([])
    expect(await world.desk.sendDueMail()).toBeNull()
    expect(await world.desk.showMail()).toEqual({ on: false, waiting: 0, troubled: [] })
    expect(world.desk.region().sendsMail).toBe(false)
  })

  it('is sent once by three processes that look at the same time', async () => {
    for (let ticket = 0; ticket < 5; ticket++) await handedOver()
    await Promise.all([world.desk.sendDueMail(), world.desk.sendDueMail(), world.desk.sendDueMail()])
    expect(server.letters).toHaveLength(5)
    expect(new Set(server.letters.map(({ messageId }) => messageId)).size).toBe(5)
  })
})

describe('an invitation', () => {
  it('is sealed in the outbox until it is sent, and nothing of it stays afterwards', async () => {
    const alder = await world.member('alder', 'administrator')
    const { token, mailed } = await world.desk.invite({ name: 'willow', role: 'volunteer', email: 'willow@larkmoor.example' }, alder)
    expect(mailed).toBe(true)
    expect(JSON.stringify(await rows())).not.toMatch(/larkmoor\.example|join/)
    expect(JSON.stringify(await rows())).not.toContain(token)
    await world.desk.sendDueMail()
    expect(server.letters).toMatchObject([{ subject: 'Larkmoor Plant Helpline: your invitation', to: { value: [{ address: 'willow@larkmoor.example' }] } }])
    expect(first(server.letters).text).toContain(`${URL}/join#${token}`)
    expect(first(await rows())).toMatchObject({ state: 'sent', sealed: null })
  })

  const invited = async () => {
    const alder = await world.member('alder', 'administrator')
    return world.desk.invite({ name: 'willow', role: 'volunteer', email: 'willow@larkmoor.example' }, alder)
  }
  const refused = () => {
    server.behave({ kind: 'refuse recipient', code: 550, words: '5.1.1 <willow@larkmoor.example> unknown' })
    return world.desk.sendDueMail()
  }
  const DROPPED = { state: 'dropped', sealed: null, why: null, claim: null }

  it('that ran out is forgotten with its letter, whether that waits or is stuck, and not a moment before', async () => {
    await invited()
    await refused()
    later(7 * 24 * HOUR - 1)
    await world.desk.forgetOldMail()
    expect(first(await rows())).toMatchObject({ state: 'stuck', sealed: expect.any(String) })
    later(1)
    await world.desk.forgetOldMail()
    expect(await rows()).toMatchObject([DROPPED])
    expect(await world.desk.showMail()).toMatchObject({ waiting: 0, troubled: [] })
    await expect(world.desk.retryMail('1')).rejects.toMatchObject({ code: 'MAIL_NOT_FOUND' })

    await world.desk.invite({ name: 'willow', role: 'volunteer', email: 'willow@larkmoor.example' }, { id: 1, name: 'alder', role: 'administrator' })
    later(7 * 24 * HOUR)
    await world.desk.forgetOldMail()
    expect(await rows()).toMatchObject([DROPPED, DROPPED])
  })

  it('that was withdrawn or used is not sent any more', async () => {
    const { token } = await invited()
    await world.desk.withdrawInvitation('willow')
    await world.desk.sendDueMail()
    expect(server.letters).toEqual([])
    expect(await rows()).toMatchObject([DROPPED])
    await expect(world.desk.join({ token, password: 'hedge lantern otter 9' })).rejects.toMatchObject({ code: 'INVITATION_SPENT' })
  })
})

describe('a mail server that will not have it', () => {
  it('is tried again after growing waits, until it takes the letter, always with the same Message-ID', async () => {
    await handedOver()
    server.behave({ kind: 'drop in the letter' }, { kind: 'refuse recipient', code: 450, words: '4.2.1 busy' }, { kind: 'drop before the reply' })
    for (const [least, most] of [[22, 38], [45, 75], [90, 150]] as const) {
      const next = await world.desk.sendDueMail()
      const waits = ((next?.getTime() ?? 0) - world.now.getTime()) / 1000
      expect(waits).toBeGreaterThanOrEqual(least)
      expect(waits).toBeLessThanOrEqual(most)
      later(waits * 1000 - 1)
      await world.desk.sendDueMail()
      later(1)
    }
    expect(server.connections()).toBe(3)
    expect(await world.desk.sendDueMail()).toBeNull()
    // Taken twice, since the server lost its first reply; a mailbox sees by the Message-ID that it is one letter.
    const [one, again, ...more] = server.letters
    expect([again?.messageId, more]).toEqual([one?.messageId, []])
    expect((await rows()).map(({ state, tries }) => [state, tries])).toEqual([['sent', 4]])
  })

  it('makes the letter stuck at once when it refuses for good, and a specialist sees it and lets it be tried again', async () => {
    await handedOver()
    server.behave({ kind: 'refuse recipient', code: 550, words: `5.1.1 <${ASHDOWN}> unknown` })
    await world.desk.sendDueMail()
    const seen = await world.desk.showMail()
    expect(seen).toEqual({
      on: true, waiting: 0, troubled: [{
        mail: '1', about: 'received', ticket: '1', stuck: true, tries: 1, madeAt: NOON, nextAt: null,
        why: 'The mail server refused the letter for good (550 5.1.1).',
      }],
    })
    later(90 * 24 * HOUR)
    await world.desk.sendDueMail()
    expect(server.connections()).toBe(1)

    expect(await world.desk.retryMail('1')).toMatchObject({ waiting: 1, troubled: [{ stuck: false }] })
    await world.desk.sendDueMail()
    expect(server.letters).toHaveLength(1)
    expect(await world.desk.showMail()).toEqual({ on: true, waiting: 0, troubled: [] })
    await expect(world.desk.retryMail('1')).rejects.toMatchObject({ code: 'MAIL_NOT_FOUND' })
    await expect(world.desk.retryMail('99')).rejects.toMatchObject({ code: 'MAIL_NOT_FOUND' })
  })

  it('does not hold up the letters behind the one that it refuses', async () => {
    await handedOver()
    await handedOver()
    server.behave({ kind: 'refuse recipient', code: 550, words: 'no' })
    await world.desk.sendDueMail()
    expect(server.letters).toHaveLength(1)
  })

  it('makes the letter stuck after four days in vain', async () => {
    await handedOver()
    server.behave(...Array.from({ length: 3 }, () => ({ kind: 'refuse recipient', code: 451, words: 'later' }) as const))
    await world.desk.sendDueMail()
    later(3 * 24 * HOUR)
    await world.desk.sendDueMail()
    expect((await world.desk.showMail()).troubled).toMatchObject([{ stuck: false, tries: 2 }])
    later(2 * 24 * HOUR)
    await world.desk.sendDueMail()
    expect((await world.desk.showMail()).troubled).toMatchObject([{ stuck: true, tries: 3 }])
  })
})

describe('a service that ends in the middle of sending', () => {
  it('sends the letter after its claim has run out', async () => {
    await handedOver()
    // As left by a process that was killed: claimed, and never heard of again.
    await world.store.db.updateTable('outbox')
      .set({ claim: 'gone', tries: 1, next_at: new Date(world.now.getTime() + 5 * 60_000).toISOString() }).execute()
    world = await world.reopen()
    await world.desk.sendDueMail()
    expect(server.letters).toEqual([])
    later(5 * 60_000)
    await world.desk.sendDueMail()
    expect(server.letters).toHaveLength(1)
  })

  it('cannot end a letter that another has claimed since, but for its having been sent', async () => {
    await handedOver()
    const { db } = world.store
    const { id } = first(await rows())
    const at = world.now.toISOString()
    await db.updateTable('outbox').set({ claim: 'newer' }).execute()
    await giveUpMail(db, id, 'older', 'stuck', at, 'no')
    await giveUpMail(db, id, 'older', 'dropped', at, null)
    expect(await rows()).toMatchObject([{ state: 'waiting', claim: 'newer', why: null, ended_at: null }])
    await giveUpMail(db, id, 'newer', 'stuck', at, 'no')
    expect(await rows()).toMatchObject([{ state: 'stuck', claim: null, why: 'no', ended_at: at }])
    await markMailSent(db, id, at)
    expect(await rows()).toMatchObject([{ state: 'sent' }])
    await giveUpMail(db, id, 'newer', 'stuck', at, 'no')
    expect(await rows()).toMatchObject([{ state: 'sent' }])
  })

  it('forgets what was sent long ago, and never what is stuck', async () => {
    await handedOver()
    await handedOver()
    server.behave({ kind: 'refuse recipient', code: 550, words: 'no' })
    await world.desk.sendDueMail()
    later(91 * 24 * HOUR)
    await world.desk.forgetOldMail()
    expect((await rows()).map(({ state }) => state)).toEqual(['stuck'])
  })
})
