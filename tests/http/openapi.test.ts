import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { routes } from '../../src/http/routes/index.js'
import { type HttpWorld, openHttpWorld } from './http-world.js'

const Operation = z.object({
  summary: z.string().min(1),
  parameters: z.array(z.object({ in: z.string(), name: z.string(), schema: z.unknown() })).optional(),
  requestBody: z.object({ content: z.union([
    z.strictObject({ 'application/json': z.object({ schema: z.unknown() }) }), z.strictObject({ 'application/octet-stream': z.object({}) }),
  ]) }).optional(),
  responses: z.record(z.string(), z.object({ description: z.string(), content: z.unknown().optional() })),
  security: z.array(z.unknown()).optional(),
})
const Document = z.object({
  openapi: z.literal('3.1.0'), info: z.object({ title: z.string(), version: z.string() }),
  paths: z.record(z.string(), z.record(z.string(), Operation)),
  components: z.object({ schemas: z.record(z.string(), z.unknown()) }),
})

describe('the OpenAPI document', () => {
  let world: HttpWorld
  let document: z.infer<typeof Document>
  beforeAll(async () => {
    world = await openHttpWorld()
    document = Document.parse((await supertest(world.app).get('/api/openapi.json').expect(200)).body)
  })
  afterAll(() => world.close())

  // OpenAPI Specification 3.1.0: path templating, path parameters, and references to components.
  it('has every route and no other', () => {
    const listed = Object.entries(document.paths)
      .flatMap(([path, methods]) => Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`))
    expect(listed.sort()).toEqual(
      routes.map(({ method, path }) => `${method} ${path.replaceAll(/:([a-z]+)/g, '{$1}')}`).sort())
  })

  it('describes every part of every path', () => {
    for (const [path, methods] of Object.entries(document.paths)) {
      const parts = [...path.matchAll(/\{([a-z]+)\}/g)].map(([, name]) => name)
      for (const { parameters = [] } of Object.values(methods)) {
        expect(parameters.filter((one) => one.in === 'path').map(({ name }) => name)).toEqual(parts)
      }
    }
  })

  it('refers only to what it holds', () => {
    const names = [...JSON.stringify(document).matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => name ?? '')
    expect(names.length).toBeGreaterThan(20)
    for (const name of names) expect(Object.keys(document.components.schemas)).toContain(name)
    expect(Object.keys(document.components.schemas)).toEqual(expect.arrayContaining(['CaseView', 'ProblemDocument', 'TicketView']))
  })

  it('says which routes need a session', () => {
    expect(document.paths['/api/tickets']?.['get']?.security).toEqual([{ session: [] }])
    expect(document.paths['/api/cases']?.['post']?.security).toBeUndefined()
  })

  it('says what every route refuses with', () => {
    for (const methods of Object.values(document.paths)) {
      for (const { responses } of Object.values(methods)) {
        expect(JSON.stringify(responses['default'])).toContain('"#/components/schemas/ProblemDocument"')
      }
    }
  })
})
