import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Role } from '../../shared/index.js'
import { accessTo, checkRole, roles } from '../../src/http/roles.js'
import { routes } from '../../src/http/routes/index.js'
import { type Asker, type HttpWorld, openHttpWorld, problemOf } from './http-world.js'

const nameOf = ({ method, path }: { method: string; path: string }) => `${method} ${path}`
const EVERYONE = ['public', ...Role.options] as const
type Someone = (typeof EVERYONE)[number]

describe('the table of roles', () => {
  it('lists every route once and nothing else', () => {
    expect(Object.keys(roles).sort()).toEqual(routes.map(nameOf).sort())
  })

  it('refuses a route that it does not list to everybody', () => {
    const route = { method: 'POST', path: '/api/forgotten' }
    expect(() => { checkRole(route, null) }).toThrow('NOT_YOUR_ROLE')
    for (const role of Role.options) {
      expect(() => { checkRole(route, { id: 1, name: 'x', role }) }).toThrow('NOT_YOUR_ROLE')
    }
  })

  // What the design says of people, route family by family; a route of no family here must be the public's.
  const families: readonly (readonly [family: RegExp, mayUse: readonly Someone[]])[] = [
    [/^\w+ \/api\/(tickets|casebook|tree-suggestions|colleagues|mail)(\/|$)/, ['specialist', 'administrator']],
    [/^\w+ \/api\/guide\/hosts\/:host\/(problems|checks)$/, ['specialist', 'administrator']],
    [/^\w+ \/api\/(people|settings)(\/|$)/, ['administrator']],
    [/^\w+ \/api\/guide\/state$/, Role.options],
    [/^\w+ \/api\/(calls|practice)(\/|$)/, Role.options],
    [/^\w+ \/api\/cases\/:link\/(notes|similar)$/, Role.options],
    [/^GET \/api\/season(\/|$)/, Role.options],
    [/^POST \/api\/season\//, ['specialist', 'administrator']],
    [/^\w+ \/api\/me(\/|$)/, Role.options],
  ]
  const PUBLIC = /^\w+ (\/healthz|\/readyz|\/metrics|\/api\/(openapi\.json|region|session|suggest|sign-in|sign-out|invitation|join|seeing)|\/api\/guide\/hosts(\/:host\/complaints)?|\/api\/cases(\/.*)?)$/

  it.each(routes.map((route) => [nameOf(route), route] as const))('%s is open to those whom the design names', (name, route) => {
    const named = families.find(([family]) => family.test(name))?.[1]
    if (named === undefined) {
      expect(name).toMatch(PUBLIC)
      expect(accessTo(route)).toBe('anyone')
    } else expect(EVERYONE.filter((who) => mayUse(route, who))).toEqual(EVERYONE.filter((who) => named.includes(who)))
  })
})

describe('who is let through', () => {
  let world: HttpWorld
  let people: Record<Role, Asker>
  beforeAll(async () => {
    world = await openHttpWorld()
    people = {
      volunteer: await world.signedIn('willow', 'volunteer'), specialist: await world.signedIn('sedge', 'specialist'),
      administrator: await world.signedIn('alder', 'administrator'),
    }
  })
  afterAll(() => world.close())

  // Every route of the service with every role, from the route table itself, by its own method: what a request without a
  // body, or with an unknown case or ticket, gets. 401 and 403 are a closed door; anything else means that it was open.
  it.each(routes.map((route) => [nameOf(route), route] as const))('%s keeps out everyone else', async (name, route) => {
    const path = route.path.replaceAll(/:([a-z]+)/g, (_part, part: string) => (
      { link: 'x'.repeat(32), ticket: '999', host: 'lettuce', photo: '1', upload: 'y'.repeat(22), mail: '999' }[part] ?? 'z'))
    for (const who of EVERYONE) {
      // What ends the session that asks is tried with a session of its own.
      const cookie = who === 'public' ? null : (ENDS_THE_SESSION.test(name) ? await world.signedIn(`${who} at ${path}`, who) : people[who]).cookie
      const ask = supertest(world.app)[({ GET: 'get', POST: 'post', PUT: 'put' } as const)[route.method]](path)
      const reply = await (cookie === null ? ask : ask.set({ cookie, 'sec-fetch-site': 'same-origin' }))
      if (mayUse(route, who)) {
        expect([404, 405].includes(reply.status) && /NO_SUCH_PLACE|WRONG_METHOD/.test(problemOf(reply).code), `${name} is asked`).toBe(false)
        expect(reply.status === 401 || (reply.status === 403 && problemOf(reply).code === 'NOT_YOUR_ROLE'), `${who} is let in`).toBe(false)
      } else {
        expect(reply.status, `${who} is kept out`).toBe(who === 'public' ? 401 : 403)
        expect(problemOf(reply).code).toBe(who === 'public' ? 'NOT_SIGNED_IN' : 'NOT_YOUR_ROLE')
      }
    }
  })
})

const ENDS_THE_SESSION = /^POST \/api\/(sign-out|me\/sign-out-everywhere)$/

function mayUse(route: { readonly method: string; readonly path: string }, who: Someone): boolean {
  try {
    checkRole(route, who === 'public' ? null : { id: 1, name: 'x', role: who })
    return true
  } catch {
    return false
  }
}
