import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Role } from '../../shared/index.js'
import { checkRole, roles } from '../../src/http/roles.js'
import { routes } from '../../src/http/routes/index.js'
import { type Asker, type HttpWorld, openHttpWorld, problemOf } from './http-world.js'

const nameOf = ({ method, path }: { method: string; path: string }) => `${method} ${path}`

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

  // From the route table of the service's design: role by role, what a request without a body or with an unknown case
  // or ticket gets. 401 and 403 are a closed door; anything else means that the door was open.
  const doors: [route: string, open: readonly (Role | 'public')[]][] = [
    ['GET /healthz', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/openapi.json', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/region', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/guide/hosts', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/guide/hosts/:host/complaints', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/guide/hosts/:host/problems', ['specialist', 'administrator']],
    ['POST /api/suggest', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/cases/:link', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/place', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/words', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/answers', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/carry-on', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/hand-over', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/notes', ['volunteer', 'specialist', 'administrator']],
    ['PUT /api/cases/:link/photos/:upload', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/cases/:link/photos/:photo/large', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/cases/:link/photos/:photo/small', ['public', 'volunteer', 'specialist', 'administrator']],
    ['POST /api/cases/:link/photos/:photo/remove', ['public', 'volunteer', 'specialist', 'administrator']],
    ['GET /api/calls', ['volunteer', 'specialist', 'administrator']],
    ['POST /api/calls/:link/close', ['volunteer', 'specialist', 'administrator']],
    ['GET /api/tickets', ['specialist', 'administrator']],
    ['GET /api/tickets/:ticket', ['specialist', 'administrator']],
    ['POST /api/tickets/:ticket/take', ['specialist', 'administrator']],
    ['POST /api/tickets/:ticket/settle', ['specialist', 'administrator']],
    ['GET /api/me', ['volunteer', 'specialist', 'administrator']],
  ]

  it('covers every route here but signing in and out', () => {
    expect([...doors.map(([route]) => route), 'POST /api/sign-in', 'POST /api/sign-out'].sort())
      .toEqual(routes.map(nameOf).sort())
  })

  it.each(doors)('%s is open to %j', async (route, open) => {
    const [method = '', pattern = ''] = route.split(' ')
    const path = pattern.replace(':link', 'x'.repeat(32)).replace(':ticket', '999').replace(':host', 'lettuce')
    for (const who of ['public', ...Role.options] as const) {
      const ask = who === 'public' ? null : people[who]
      const reply = method === 'GET' ? await (ask?.get(path) ?? supertest(world.app).get(path))
        : await (ask?.post(path) ?? supertest(world.app).post(path))
      const closed = who === 'public' ? 401 : 403
      if (open.includes(who)) expect([401, 403], `${who} is let in`).not.toContain(reply.status)
      else {
        expect(reply.status, `${who} is kept out`).toBe(closed)
        expect(problemOf(reply).code).toBe(who === 'public' ? 'NOT_SIGNED_IN' : 'NOT_YOUR_ROLE')
      }
    }
  })
})
