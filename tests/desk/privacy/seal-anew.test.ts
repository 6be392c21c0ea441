import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Secret, TOTP } from 'otpauth'
import { KEY_BYTES, type NamedKey } from '../../../src/desk/index.js'
import { openMailer } from '../../../src/mail/index.js'
import { type MailServer, openMailServer } from '../../mail/mail-server.js'
import { first, openWorld, TEST_KEY, testKeys, type World } from '../desk-world.js'

const NEW_KEY: NamedKey = { id: 'fresh', bytes: new Uint8Array(KEY_BYTES).fill(8) }

let server: MailServer
let world: World
beforeEach(async () => {
  server = await openMailServer()
  world = await openWorld(undefined, { mailer: openMailer({ smtpUrl: server.url, from: 'helpline@plants.example' }), publicUrl: 'https://plants.example' })
})
afterEach(async () => {
  await world.close()
  await server.close()
})

/** One start with the new key first and the old one behind it, then a start with the new key alone. */
async function changeKey(): Promise<void> {
  world = await world.reopen(testKeys(NEW_KEY, TEST_KEY))
  await world.desk.sealAnew()
  world = await world.reopen(testKeys(NEW_KEY))
  await world.desk.sealAnew()
}

async function handedOver(contact: { email: string; phone?: string }): Promise<string> {
  const { link } = await world.desk.openCase({ words: 'my lettuce is yellow' }, null)
  await world.desk.handOver(link, { revision: 0, contact }, null)
  const { tickets } = await world.desk.listTickets({ state: 'waiting' })
  return String(Math.max(...tickets.map(({ ticket }) => Number(ticket))))
}

describe('after a change of keys', { timeout: 90_000 }, () => {
  it('contacts can be read, and an asker who asks again is known', async () => {
    const sedge = await world.member('sedge', 'specialist')
    const before = await handedOver({ email: 'ashdown@larkmoor.example', phone: '555-0190' })
    await changeKey()
    expect((await world.desk.readContact(before, sedge)).contact).toEqual({ email: 'ashdown@larkmoor.example', phone: '555-0190' })
    const after = await handedOver({ email: 'Ashdown@larkmoor.example' })
    expect((await world.desk.showTicket(after, sedge)).sameAsker.map(({ ticket }) => ticket)).toEqual([before])
  })

  it('contacts that an older key marked are marked anew, even when they are sealed with the key of today', async () => {
    const sedge = await world.member('sedge', 'specialist')
    const before = await handedOver({ email: 'ashdown@larkmoor.example' })
    await world.store.db.updateTable('contact_sealed').set({ email_mark: 'of a key that is gone' }).execute()
    await world.desk.sealAnew()
    const after = await handedOver({ email: 'ashdown@larkmoor.example' })
    expect((await world.desk.showTicket(after, sedge)).sameAsker.map(({ ticket }) => ticket)).toEqual([before])
  })

  it('one-time codes let in whoever has them, and none of them twice', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const { member } = await world.desk.signIn({ name: 'sedge', password }, 'a desk')
    const { secret } = await world.desk.startCodes(member, { password }, 'a desk')
    const app = new TOTP({ secret: Secret.fromBase32(secret) })
    const taken = app.generate({ timestamp: world.now.getTime() })
    await world.desk.confirmCodes(member, { code: taken })
    await changeKey()
    await expect(world.desk.signIn({ name: 'sedge', password, code: taken }, 'a desk')).rejects.toMatchObject({ code: 'CODE_WRONG' })
    world.now = new Date(world.now.getTime() + 60_000)
    const code = app.generate({ timestamp: world.now.getTime() })
    expect((await world.desk.signIn({ name: 'sedge', password, code }, 'a desk')).member.name).toBe('sedge')
  })

  it('letters that waited are sent with what was sealed in them', async () => {
    const alder = await world.member('alder', 'administrator')
    const { token } = await world.desk.invite({ name: 'willow', role: 'volunteer', email: 'willow@larkmoor.example' }, alder)
    await changeKey()
    await world.desk.sendDueMail()
    expect(first(server.letters)).toMatchObject({ to: { value: [{ address: 'willow@larkmoor.example' }] } })
    expect(first(server.letters).text).toContain(`/join#${token}`)
  })

  it('a start without the old key says what is sealed with it and what to do, and changes nothing', async () => {
    await handedOver({ email: 'ashdown@larkmoor.example' })
    const kept = await world.store.db.selectFrom('contact_sealed').selectAll().execute()
    world = await world.reopen(testKeys(NEW_KEY))
    await expect(world.desk.sealAnew()).rejects.toThrow(/contact of ticket 1 is sealed with the key "test".*Put that key behind the first one/)
    expect(await world.store.db.selectFrom('contact_sealed').selectAll().execute()).toEqual(kept)
  })

  it('a letter that nobody can use any more needs no old key', async () => {
    const alder = await world.member('alder', 'administrator')
    await world.desk.invite({ name: 'willow', role: 'volunteer', email: 'willow@larkmoor.example' }, alder)
    const { now } = world
    world = await world.reopen(testKeys(NEW_KEY))
    world.now = new Date(now.getTime() + 7 * 86_400_000)
    await world.desk.sealAnew()
    expect(await world.store.db.selectFrom('outbox').select(['state', 'sealed']).execute()).toEqual([{ state: 'dropped', sealed: null }])
  })
})
