import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Secret, TOTP } from 'otpauth'
import type { Member } from '../../src/desk/index.js'
import { openWorld, type World } from './desk-world.js'

let world: World
let sedge: Member
let password: string
beforeEach(async () => {
  world = await openWorld()
  password = (await world.desk.addPerson('sedge', 'specialist')).password
  sedge = (await world.desk.signIn({ name: 'sedge', password }, 'a desk')).member
})
afterEach(() => world.close())

const later = (seconds: number) => {
  world.now = new Date(world.now.getTime() + seconds * 1000)
}
/** What the person's app shows now. */
const appOf = (secret: string) => new TOTP({ secret: Secret.fromBase32(secret) })
const shown = (app: TOTP) => app.generate({ timestamp: world.now.getTime() })
const signIn = (code?: string) => world.desk.signIn({ name: 'sedge', password, ...(code === undefined ? {} : { code }) }, 'a desk')

async function withCodes() {
  const { secret } = await world.desk.startCodes(sedge, { password }, 'a desk')
  const app = appOf(secret)
  const { codes } = await world.desk.confirmCodes(sedge, { code: shown(app) })
  later(60)
  return { app, codes }
}

describe('desk: one-time codes', () => {
  it('are asked for only once an app has shown the right one', async () => {
    const { secret, address } = await world.desk.startCodes(sedge, { password }, 'a desk')
    expect(address).toMatch(/^otpauth:\/\/totp\/.*sedge\?.*secret=/)
    expect(address).toContain(secret)
    await signIn()
    await expect(world.desk.confirmCodes(sedge, { code: '000000' })).rejects.toMatchObject({ code: 'CODE_WRONG' })
    await signIn()
    await world.desk.confirmCodes(sedge, { code: shown(appOf(secret)) })
    later(60)
    await expect(signIn()).rejects.toMatchObject({ code: 'CODE_NEEDED' })
    expect((await signIn(shown(appOf(secret)))).member.name).toBe('sedge')
    expect(await world.desk.showMe(sedge)).toEqual({ name: 'sedge', role: 'specialist', codes: 'on', recoveryCodesLeft: 10 })
  })

  it('let nobody in twice with the same code, nor with the one before it', async () => {
    const { app } = await withCodes()
    const before = shown(app)
    later(30)
    const code = shown(app)
    await signIn(code)
    await expect(signIn(code)).rejects.toMatchObject({ code: 'CODE_WRONG' })
    await expect(signIn(before)).rejects.toMatchObject({ code: 'CODE_WRONG' })
    later(30)
    await signIn(shown(app))
  })

  it('let in one of many who use the same code at once', async () => {
    const { app } = await withCodes()
    const code = shown(app)
    const outcomes = await Promise.allSettled([signIn(code), signIn(code), signIn(code)])
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  })

  it('are no use without the password, and a wrong one counts as a failed sign-in', async () => {
    const { app } = await withCodes()
    await expect(world.desk.signIn({ name: 'sedge', password: 'wrong', code: shown(app) }, 'a')).rejects.toMatchObject({ code: 'SIGN_IN_FAILED' })
    for (let turn = 0; turn < 4; turn++) await expect(signIn('000000')).rejects.toMatchObject({ code: 'CODE_WRONG' })
    await expect(signIn(shown(app))).rejects.toMatchObject({ code: 'SIGN_IN_PAUSED' })
  })

  it('give no fresh count to whoever leaves the code out', async () => {
    await withCodes()
    for (let turn = 0; turn < 5; turn++) await expect(signIn()).rejects.toMatchObject({ code: 'CODE_NEEDED' })
    await expect(signIn()).rejects.toMatchObject({ code: 'SIGN_IN_PAUSED' })
  })

  it('come with recovery codes that let in once each, however they are typed', async () => {
    const { codes } = await withCodes()
    expect(new Set(codes).size).toBe(10)
    const [one = '', two = ''] = codes
    expect(one).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/)
    await signIn(one)
    await expect(signIn(one)).rejects.toMatchObject({ code: 'CODE_WRONG' })
    await signIn(two.toUpperCase().replaceAll('-', ' '))
    expect((await world.desk.showMe(sedge)).recoveryCodesLeft).toBe(8)
  })

  it('lie in the store neither in clear nor so that another person\'s row could hold them', async () => {
    const { secret } = await world.desk.startCodes(sedge, { password }, 'a desk')
    const { codes } = await world.desk.confirmCodes(sedge, { code: shown(appOf(secret)) })
    const rows = [...await world.store.db.selectFrom('code_secret').selectAll().execute(), ...await world.store.db.selectFrom('recovery_code').selectAll().execute()]
    const text = JSON.stringify(rows)
    expect(text).not.toContain(secret)
    for (const code of codes) expect(text).not.toContain(code.replaceAll('-', ''))

    const reed = await world.member('reed', 'specialist')
    const row = await world.store.db.selectFrom('code_secret').selectAll().executeTakeFirstOrThrow()
    await world.store.db.insertInto('code_secret').values({ ...row, person_id: reed.id, confirmed_at: null, last_step: 0 }).execute()
    await expect(world.desk.confirmCodes(reed, { code: shown(appOf(secret)) })).rejects.toThrow()
  })

  it('begin and end only with the password', async () => {
    await expect(world.desk.startCodes(sedge, { password: 'wrong' }, 'a desk')).rejects.toMatchObject({ code: 'PASSWORD_WRONG' })
    await withCodes()
    await expect(world.desk.startCodes(sedge, { password }, 'a desk')).rejects.toMatchObject({ code: 'CODES_ON' })
    await expect(world.desk.stopCodes(sedge, { password: 'wrong' }, 'a desk')).rejects.toMatchObject({ code: 'PASSWORD_WRONG' })
    await world.desk.stopCodes(sedge, { password }, 'a desk')
    await signIn()
  })

  it('are needed by the roles that an administrator names, and then nothing else may be done first', async () => {
    const alder = await world.member('alder', 'administrator')
    await world.desk.decideSettings({ codesFor: ['specialist'], eraseContactAfterDays: null }, alder)
    const { member, token } = await signIn()
    expect(member.mustSetUpCodes).toBe(true)
    expect(await world.desk.showMe(member)).toMatchObject({ codes: 'to be set up' })
    const { secret } = await world.desk.startCodes(member, { password }, 'a desk')
    await world.desk.confirmCodes(member, { code: shown(appOf(secret)) })
    expect((await world.desk.memberOfSession(token))?.mustSetUpCodes).toBe(false)
  })

  it('can be forgotten by an administrator for somebody who has lost everything', async () => {
    await withCodes()
    const alder = await world.member('alder', 'administrator')
    const { people } = await world.desk.forgetCodesOf('sedge', alder)
    expect(people.find(({ name }) => name === 'sedge')).toMatchObject({ codes: false, sessions: 0 })
    await signIn()
  })
})
