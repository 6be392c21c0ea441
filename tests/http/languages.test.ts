import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type HttpWorld, openHttpWorld } from './http-world.js'

let world: HttpWorld
beforeAll(async () => { world = await openHttpWorld() })
afterAll(() => world.close())

const get = (path: string, language = '') => supertest(world.app).get(path).set('accept-language', language)
const post = (path: string, body: object, language = '') => supertest(world.app).post(path).set('accept-language', language).send(body)
const form = (path: string, fields: Record<string, string>, language = '') => supertest(world.app).post(path).type('form').set('sec-fetch-site', 'same-origin').set('accept-language', language).send(fields)
const hidden = (html: string, name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(html)?.[1] ?? ''

describe('the language of a request', () => {
  // RFC 9110, section 12.5.4: languages with weights, the heaviest that is spoken here is taken.
  it.each([['es', 'es'], ['fr, es;q=0.8, en;q=0.7', 'es'], ['en;q=0.5, es-MX;q=0.9', 'es'], ['da, en-GB;q=0.8', 'en'], ['fr', 'en'], ['', 'en']])('asked for as "%s" opens a case in %s', async (header, language) => {
    expect((await post('/api/cases', { words: 'my rose has spots' }, header).expect(201)).body).toMatchObject({ language })
  })

  it('gives way to one that the body names', async () => {
    expect((await post('/api/cases', { words: 'my rose has spots', language: 'es' }, 'en').expect(201)).body).toMatchObject({ language: 'es' })
  })

  it('is not asked of a volunteer\'s browser: a call is in English unless said', async () => {
    const volunteer = await world.signedIn('fern', 'volunteer')
    expect((await volunteer.post('/api/cases', { words: 'my rose has spots' }).set('accept-language', 'es').expect(201)).body).toMatchObject({ language: 'en' })
  })

  it('is that of what went wrong, in words for the asker', async () => {
    const missing = '/api/cases/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA'
    expect((await get(missing, 'es').expect(404)).body).toMatchObject({ code: 'CASE_NOT_FOUND', title: 'No existe esta ficha' })
    expect((await get(missing, 'en').expect(404)).body).toMatchObject({ code: 'CASE_NOT_FOUND', title: 'No such case' })
  })

  it('is changed for an open case by its own address', async () => {
    const { link } = (await post('/api/cases', { words: 'my rose has spots' }).expect(201)).body
    expect((await post(`/api/cases/${link}/language`, { revision: 0, language: 'es' }).expect(200)).body).toMatchObject({ language: 'es', revision: 1 })
    expect((await get(`/api/cases/${link}`, 'en')).body).toMatchObject({ language: 'es' })
    await post(`/api/cases/${link}/language`, { revision: 1, language: 'tlh' }).expect(400)
  })
})

describe('the plain pages in Spanish', () => {
  it('are what a Spanish browser is shown, and say so', async () => {
    const page = await get('/ask', 'es-ES,es;q=0.9').expect(200).expect('content-language', 'es').expect('vary', /Accept-Language/)
    expect(page.text).toContain('<html lang="es">')
    expect(page.text).toContain('¿Qué le pasa a su planta?')
    expect(page.text).toMatch(/<a href="\/ask\?language=en" lang="en" hreflang="en">English<\/a>/i)
  })

  it('are chosen by the address, whatever the browser says, and stay so through a mistake', async () => {
    const page = await get('/ask?language=es', 'en').expect(200)
    expect(hidden(page.text, 'language')).toBe('es')
    const empty = await form('/ask', { words: ' ', key: hidden(page.text, 'key'), language: 'es' }, 'en').expect(422)
    expect(empty.text).toContain('Primero escriba unas palabras sobre la planta, por favor.')
    expect(empty.text).toContain('<html lang="es">')
  })

  it('open a case in Spanish that stays so, and is changed by a button', async () => {
    const page = await get('/ask?language=es', 'en')
    const reply = await form('/ask', { words: 'my rose has black spots', key: hidden(page.text, 'key'), language: 'es' }, 'en').expect(303)
    const path = (reply.headers['location'] ?? '').split('#')[0] ?? ''
    const sheet = await get(path, 'en').expect(200)
    expect(sheet.text).toContain('<html lang="es">')
    expect(sheet.text).toContain('Con sus palabras')
    await form(`${path}/language`, { revision: hidden(sheet.text, 'revision'), language: 'en' }).expect(303)
    expect((await get(path, 'es')).text).toContain('In your words')
  })

  it('say in Spanish what was refused', async () => {
    expect((await get('/ask/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA', 'es').expect(404)).text).toContain('No encontramos esta ficha.')
  })
})
