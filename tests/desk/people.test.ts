import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openWorld, type World } from './desk-world.js'

let world: World
beforeEach(async () => {
  world = await openWorld()
})
afterEach(() => world.close())

const rows = () => world.store.db.selectFrom('person').selectAll().execute()

describe('desk: accounts', () => {
  it('makes one account a role for the demonstration, with passwords that work, and only once', async () => {
    const made = await world.desk.addDemonstrationPeople()
    expect(made.map(({ name, role }) => [name, role])).toEqual([
      ['willow', 'volunteer'], ['sedge', 'specialist'], ['alder', 'administrator'],
    ])
    for (const { name, role, password } of made) {
      expect((await world.desk.signIn({ name, password }, 'a desk')).member).toMatchObject({ name, role })
    }
    expect(await world.desk.addDemonstrationPeople()).toEqual([])
    expect(await rows()).toHaveLength(3)
  })

  // OWASP Password Storage Cheat Sheet: Argon2id with m=19456 (19 MiB), t=2, p=1.
  it('keeps passwords as Argon2id with the strength that OWASP recommends', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const [row] = await rows()
    expect(row?.password_hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    expect(JSON.stringify(row)).not.toContain(password)
  })

  it('never gives a name twice, not even after its person has gone', async () => {
    await world.desk.addPerson('sedge', 'specialist')
    await expect(world.desk.addPerson('sedge', 'volunteer')).rejects.toThrow(/"sedge" is taken, or was once/)
    expect(await world.desk.removePerson('sedge')).toBe(true)
    expect(await world.desk.removePerson('sedge')).toBe(false)
    await expect(world.desk.addPerson('sedge', 'volunteer')).rejects.toThrow(/taken/)
  })
})

describe('desk: signing in', () => {
  it('opens a session that is kept only as its hash and lasts twelve hours', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const { token, member, expiresAt } = await world.desk.signIn({ name: 'sedge', password }, 'a desk')
    expect(Buffer.from(token, 'base64url')).toHaveLength(32)
    expect(expiresAt.getTime() - world.now.getTime()).toBe(12 * 3_600_000)
    expect(JSON.stringify(await world.store.db.selectFrom('session').selectAll().execute())).not.toContain(token)
    expect(await world.desk.memberOfSession(token)).toEqual(member)

    world.now = new Date(expiresAt.getTime() - 1)
    expect(await world.desk.memberOfSession(token)).toEqual(member)
    world.now = expiresAt
    expect(await world.desk.memberOfSession(token)).toBeNull()
  })

  it('ends the session at sign-out, and every session of a person who is removed', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    const one = await world.desk.signIn({ name: 'sedge', password }, 'a desk')
    const two = await world.desk.signIn({ name: 'sedge', password }, 'another desk')
    await world.desk.signOut(one.token)
    expect(await world.desk.memberOfSession(one.token)).toBeNull()
    expect(await world.desk.memberOfSession(two.token)).not.toBeNull()
    await world.desk.removePerson('sedge')
    expect(await world.desk.memberOfSession(two.token)).toBeNull()
    await expect(world.desk.signIn({ name: 'sedge', password }, 'a desk')).rejects.toMatchObject({ code: 'SIGN_IN_FAILED' })
  })

  it('says the same of a wrong name and a wrong password, and knows no made-up session', async () => {
    await world.desk.addPerson('sedge', 'specialist')
    for (const name of ['sedge', 'nobody', 'SEDGE', `sedge' --`]) {
      await expect(world.desk.signIn({ name, password: 'wrong' }, `from ${name}`))
        .rejects.toMatchObject({ code: 'SIGN_IN_FAILED', facts: {} })
    }
    expect(await world.desk.memberOfSession('')).toBeNull()
    expect(await world.desk.memberOfSession('x'.repeat(43))).toBeNull()
  })

  it('takes as long for an unknown name as for a wrong password', async () => {
    await world.desk.addPerson('sedge', 'specialist')
    const time = async (name: string, turn: number) => {
      const start = performance.now()
      await world.desk.signIn({ name, password: 'wrong' }, `address ${name} ${turn}`).catch(() => undefined)
      return performance.now() - start
    }
    await time('warm up', 0)
    const known: number[] = []
    const unknown: number[] = []
    for (let turn = 0; turn < 4; turn++) {
      known.push(await time('sedge', turn))
      unknown.push(await time(`nobody ${turn}`, turn))
    }
    // Without the hash of nobody an unknown name would take a tenth of the time or less. The machine may be busy, which makes a
    // time longer and never shorter: so the shortest of each is compared.
    const shortest = Math.min(...unknown) / Math.min(...known)
    expect(shortest).toBeGreaterThan(0.4)
    expect(shortest).toBeLessThan(2.5)
  })

  it('pauses after five failures, says for how long, and lets the right password in afterwards', async () => {
    const { password } = await world.desk.addPerson('sedge', 'specialist')
    for (let turn = 0; turn < 5; turn++) {
      await expect(world.desk.signIn({ name: 'sedge', password: 'wrong' }, 'a'))
        .rejects.toMatchObject({ code: 'SIGN_IN_FAILED' })
    }
    await expect(world.desk.signIn({ name: 'sedge', password }, 'a'))
      .rejects.toMatchObject({ code: 'SIGN_IN_PAUSED', facts: { retryAfterSeconds: 15 } })
    world.now = new Date(world.now.getTime() + 15_000)
    expect((await world.desk.signIn({ name: 'sedge', password }, 'a')).member.name).toBe('sedge')
    expect((await world.desk.signIn({ name: 'sedge', password }, 'b')).member.name).toBe('sedge')
  })
})
