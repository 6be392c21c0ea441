import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Member } from '../../src/desk/index.js'
import { LETTUCE_WORDS, openWorld, type World } from './desk-world.js'

let world: World
let alder: Member
beforeEach(async () => {
  world = await openWorld()
  alder = await world.member('alder', 'administrator')
})
afterEach(() => world.close())

const PASSWORD = 'hedge lantern otter 9'
const days = (count: number) => {
  world.now = new Date(world.now.getTime() + count * 24 * 3_600_000)
}

describe('desk: invitations', () => {
  it('make one account with a password of the person\'s own, and sign them in', async () => {
    const { token, link, expiresAt } = await world.desk.invite({ name: 'reed', role: 'specialist' }, alder)
    expect(link).toBe(`/join#${token}`)
    expect(await world.desk.lookAtInvitation({ token })).toEqual({ name: 'reed', role: 'specialist', expiresAt })
    const { member, token: session } = await world.desk.join({ token, password: PASSWORD })
    expect(member).toMatchObject({ name: 'reed', role: 'specialist' })
    expect(await world.desk.memberOfSession(session)).toMatchObject({ name: 'reed' })
    expect((await world.desk.signIn({ name: 'reed', password: PASSWORD }, 'a')).member.name).toBe('reed')
  })

  it('work once, even for two who use the link at the same moment', async () => {
    const { token } = await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    const outcomes = await Promise.allSettled([1, 2].map(() => world.desk.join({ token, password: PASSWORD })))
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    await expect(world.desk.join({ token, password: PASSWORD })).rejects.toMatchObject({ code: 'INVITATION_SPENT' })
  })

  it('run out after a week, and can be withdrawn before', async () => {
    const { token } = await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    days(7)
    await expect(world.desk.lookAtInvitation({ token })).rejects.toMatchObject({ code: 'INVITATION_SPENT' })
    const second = await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    expect((await world.desk.showPeople()).invitations).toEqual([
      { name: 'reed', role: 'volunteer', by: 'alder', madeAt: world.now.toISOString(), expiresAt: second.expiresAt },
    ])
    expect((await world.desk.withdrawInvitation('reed')).invitations).toEqual([])
    await expect(world.desk.join({ token: second.token, password: PASSWORD })).rejects.toMatchObject({ code: 'INVITATION_SPENT' })
    await expect(world.desk.withdrawInvitation('reed')).rejects.toMatchObject({ code: 'PERSON_NOT_FOUND' })
  })

  it('are kept only as a hash', async () => {
    const { token } = await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    expect(JSON.stringify(await world.store.db.selectFrom('invitation').selectAll().execute())).not.toContain(token)
  })

  it('are refused for a name that somebody has, had, or is invited under', async () => {
    await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    for (const name of ['alder', 'reed']) {
      await expect(world.desk.invite({ name, role: 'volunteer' }, alder)).rejects.toMatchObject({ code: 'NAME_TAKEN' })
    }
  })

  it.each(['reed-reed-reed', 'password1234', 'aaaaaaaaaaaa', 'abababababab', '123456789012', 'qwertyuiopas', 'reed20262026'])('refuse the easy password %s', async (password) => {
    const { token } = await world.desk.invite({ name: 'reed', role: 'volunteer' }, alder)
    await expect(world.desk.join({ token, password })).rejects.toMatchObject({ code: 'PASSWORD_EASY' })
    await world.desk.lookAtInvitation({ token })
  })
})

describe('desk: a person\'s own account', () => {
  it('changes its password with the old one, and ends every other session', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const here = await world.desk.signIn({ name: 'sedge', password }, 'a')
    const there = await world.desk.signIn({ name: 'sedge', password }, 'b')
    const session = { token: here.token, address: 'a' }
    await expect(world.desk.changePassword(here.member, { current: 'wrong', next: PASSWORD }, session)).rejects.toMatchObject({ code: 'PASSWORD_WRONG' })
    await expect(world.desk.changePassword(here.member, { current: password, next: password }, session)).rejects.toMatchObject({ code: 'PASSWORD_EASY' })
    await world.desk.changePassword(here.member, { current: password, next: PASSWORD }, session)
    expect(await world.desk.memberOfSession(here.token)).not.toBeNull()
    expect(await world.desk.memberOfSession(there.token)).toBeNull()
    await expect(world.desk.signIn({ name: 'sedge', password }, 'a')).rejects.toMatchObject({ code: 'SIGN_IN_FAILED' })
    await world.desk.signIn({ name: 'sedge', password: PASSWORD }, 'a')
  })

  it('slows down whoever guesses the password from inside a session', async () => {
    const sedge = await world.member('sedge', 'specialist')
    const session = { token: 'x', address: 'a' }
    for (let turn = 0; turn < 5; turn++) {
      await expect(world.desk.changePassword(sedge, { current: 'wrong', next: PASSWORD }, session)).rejects.toMatchObject({ code: 'PASSWORD_WRONG' })
    }
    await expect(world.desk.changePassword(sedge, { current: 'wrong', next: PASSWORD }, session)).rejects.toMatchObject({ code: 'SIGN_IN_PAUSED' })
  })

  it('signs itself out everywhere', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const sessions = [await world.desk.signIn({ name: 'sedge', password }, 'a'), await world.desk.signIn({ name: 'sedge', password }, 'b')]
    const [first] = sessions
    if (first === undefined) throw new Error('nobody signed in')
    await world.desk.signOutEverywhere(first.member)
    expect(await Promise.all(sessions.map(({ token }) => world.desk.memberOfSession(token)))).toEqual([null, null])
  })
})

describe('desk: the people of the helpline', () => {
  it('are listed with roles, codes and sessions', async () => {
    await world.member('willow', 'volunteer')
    expect((await world.desk.showPeople()).people).toEqual([
      { name: 'alder', role: 'administrator', madeAt: world.now.toISOString(), codes: false, sessions: 1 },
      { name: 'willow', role: 'volunteer', madeAt: world.now.toISOString(), codes: false, sessions: 1 },
    ])
  })

  it('change roles, and their sessions end with that', async () => {
    const { password } = await world.desk.addPerson('willow', 'volunteer')
    const { token } = await world.desk.signIn({ name: 'willow', password }, 'a')
    await world.desk.changeRole({ name: 'willow', role: 'specialist' }, alder)
    expect(await world.desk.memberOfSession(token)).toBeNull()
    expect((await world.desk.signIn({ name: 'willow', password }, 'a')).member.role).toBe('specialist')
  })

  it('are signed out by an administrator', async () => {
    const { password } = await world.desk.addPerson('willow', 'volunteer')
    const { token } = await world.desk.signIn({ name: 'willow', password }, 'a')
    await world.desk.signOutPerson('willow', alder)
    expect(await world.desk.memberOfSession(token)).toBeNull()
  })

  it('always have one administrator', async () => {
    await expect(world.desk.endAccount('alder', alder)).rejects.toMatchObject({ code: 'LAST_ADMINISTRATOR' })
    await expect(world.desk.changeRole({ name: 'alder', role: 'volunteer' }, alder)).rejects.toMatchObject({ code: 'LAST_ADMINISTRATOR' })
    await world.member('elder', 'administrator')
    expect((await world.desk.endAccount('alder', alder)).people.map(({ name }) => name)).toEqual(['elder'])
  })

  it('leave their tickets to the others when they go', async () => {
    const sedge = await world.member('sedge', 'specialist')
    const { link } = await world.desk.openCase({ words: LETTUCE_WORDS }, null)
    await world.desk.handOver(link, { revision: 0 }, null)
    const [row] = (await world.desk.listTickets({ state: 'waiting' })).tickets
    await world.desk.takeTicket(row?.ticket ?? '', sedge)
    await world.desk.endAccount('sedge', alder)
    expect(await world.desk.showTicket(row?.ticket ?? '', alder)).toMatchObject({ state: 'waiting', takenBy: null })
  })

  it('leave their tickets to the others when they leave the bench, those that waited for the asker from now on', async () => {
    const sedge = await world.member('sedge', 'specialist')
    for (const words of [LETTUCE_WORDS, 'another question', 'a third']) {
      const { link } = await world.desk.openCase({ words }, null)
      await world.desk.handOver(link, { revision: 0 }, null)
    }
    const opened = world.now.toISOString()
    const [taken = '', askedBack = '', settled = ''] = (await world.desk.listTickets({ state: 'waiting' })).tickets.map(({ ticket }) => ticket)
    await world.desk.takeTicket(taken, sedge)
    await world.desk.askBack(askedBack, { text: 'Where?', checks: [], photos: false }, sedge)
    await world.desk.settleTicket(settled, { text: 'Mildew.', outcome: { kind: 'not known' } }, sedge)
    days(1)
    await world.desk.changeRole({ name: 'sedge', role: 'administrator' }, alder)
    expect(await world.desk.showTicket(taken, alder)).toMatchObject({ state: 'taken', takenBy: 'sedge' })
    await world.desk.changeRole({ name: 'sedge', role: 'volunteer' }, alder)
    expect(await world.desk.showTicket(taken, alder)).toMatchObject({ state: 'waiting', takenBy: null, waitsSince: opened })
    expect(await world.desk.showTicket(askedBack, alder)).toMatchObject({ state: 'waiting', takenBy: null, waitsSince: world.now.toISOString() })
    expect(await world.desk.showTicket(settled, alder)).toMatchObject({ state: 'settled', takenBy: 'sedge' })
    expect((await world.desk.showTicket(taken, alder)).history.at(-1)).toMatchObject({ by: 'alder', kind: 'given back' })
  })

  it('are not found when nobody has the name', async () => {
    for (const ask of [
      () => world.desk.endAccount('nobody', alder), () => world.desk.signOutPerson('nobody', alder),
      () => world.desk.changeRole({ name: 'nobody', role: 'volunteer' }, alder), () => world.desk.forgetCodesOf('nobody', alder),
    ]) await expect(ask()).rejects.toMatchObject({ code: 'PERSON_NOT_FOUND' })
  })

  it('are governed by settings whose every change is kept', async () => {
    expect(await world.desk.helplineSettings()).toEqual({ codesFor: [], eraseContactAfterDays: null })
    await world.desk.decideSettings({ codesFor: ['administrator'], eraseContactAfterDays: 14 }, alder)
    await world.desk.decideSettings({ codesFor: [], eraseContactAfterDays: 7 }, alder)
    expect(await world.desk.helplineSettings()).toEqual({ codesFor: [], eraseContactAfterDays: 7 })
    expect(await world.store.db.selectFrom('helpline_setting').selectAll().execute()).toHaveLength(2)
  })
})
