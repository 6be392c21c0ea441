import supertest from 'supertest'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

vi.mock('sharp', () => { throw new Error('Could not load the "sharp" module') })

let world: HttpWorld
beforeAll(async () => { world = await openHttpWorld() })
afterAll(() => world.close())

it('says that the service cannot open photos and blames none, and the log says what to do', async () => {
  const { link } = await openCase(world.app, 'my lettuce')
  const reply = await supertest(world.app).put(`/api/cases/${link}/photos/${'k'.repeat(22)}`).send(Buffer.from([0xff, 0xd8, 0xff, 0xe0])).expect(503)
  expect(problemOf(reply)).toMatchObject({ code: 'PHOTOS_OUT_OF_ORDER', detail: expect.stringContaining('Nothing is wrong with yours') as string })
  expect(world.logged.join('')).toContain('could not be loaded. Install the packages')
})
