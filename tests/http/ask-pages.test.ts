import sharp from 'sharp'
import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type HttpWorld, openHttpWorld } from './http-world.js'

const WORDS = 'black spots on my rose leaves and they fall off'

let world: HttpWorld
beforeAll(async () => { world = await openHttpWorld() })
afterAll(() => world.close())

const get = (path: string) => supertest(world.app).get(path)
const post = (path: string, fields: Record<string, string>) => supertest(world.app).post(path).type('form').set('sec-fetch-site', 'same-origin').send(fields)
/** A hidden field of the page. */
const hidden = (html: string, name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(html)?.[1] ?? ''

async function opened(words = WORDS): Promise<{ path: string, link: string }> {
  const page = await get('/ask').expect(200)
  const reply = await post('/ask', { words, key: hidden(page.text, 'key'), district: 'holt-fen' }).expect(303)
  const path = (reply.headers['location'] ?? '').split('#')[0] ?? ''
  return { path, link: path.slice('/ask/'.length) }
}

/** Opened, with the rose settled. */
async function atTheFirstCheck(): Promise<{ path: string, link: string, html: string }> {
  const { path, link } = await opened()
  await post(`${path}/place`, { revision: '0', host: 'rose', node: '' }).expect(303)
  return { path, link, html: (await get(path).expect(200)).text }
}

describe('the plain pages', () => {
  it('open one case however often the button is pressed', async () => {
    const page = await get('/ask').expect(200).expect('content-type', /^text\/html/).expect('cache-control', 'no-store')
    const fields = { words: WORDS, key: hidden(page.text, 'key'), district: '' }
    const once = await post('/ask', fields).expect(303)
    const twice = await post('/ask', fields).expect(303)
    expect(twice.headers['location']).toBe(once.headers['location'])
    expect(hidden((await get('/ask')).text, 'key')).not.toBe(fields.key)
  })

  it('set no cookie and read none, from the first page to the hand-over', async () => {
    const { path, html } = await atTheFirstCheck()
    const volunteer = await world.signedIn('fern', 'volunteer')
    const replies = [
      await get('/ask'), await get(path).set('cookie', volunteer.cookie),
      await post(`${path}/answers`, { revision: hidden(html, 'revision'), check: hidden(html, 'check'), answer: 'not sure' }).set('cookie', volunteer.cookie),
    ]
    for (const reply of replies) expect(reply.headers['set-cookie']).toBeUndefined()
    // Worked with a volunteer's cookie, it is none of the volunteer's calls.
    expect((await volunteer.get('/api/calls')).body).toEqual({ calls: [] })
  })

  it('refuse a form that a page elsewhere sends', async () => {
    const { path } = await opened()
    for (const [header, value] of [['sec-fetch-site', 'cross-site'], ['origin', 'https://elsewhere.example']] as const) {
      const reply = await supertest(world.app).post(`${path}/carry-on`).type('form').set(header, value).send({ revision: '0' }).expect(403)
      expect(reply.text).toContain('sent from another page')
    }
  })

  it('keep what was asked and what was heard apart from markup', async () => {
    const { path } = await opened('my rose has <script>alert(1)</script> & "black" spots $& $1')
    const { text } = await get(path).expect(200)
    expect(text).not.toContain('<script>alert')
    expect(text).toContain('&lt;script>alert(1)')
    expect(text).toContain('$&amp; $1')
  })

  it('meet words that tell of no trouble with the plant alone, and with a way to ask a person', async () => {
    const { path } = await opened('hello, it is about my hydrangea')
    const { text } = await get(path).expect(200)
    expect(text.match(/class="offer-trouble">[^<]*/g)).toEqual(['class="offer-trouble">we will ask what you see'])
    expect(text).toContain('<summary>It is not sick. I want to know how to grow it or cut it</summary>')
    expect(text).toContain('name="host" value="pruning"')
    expect(text).toContain(`<a href="${path}?specialist=#now">None of these. Ask a specialist</a>`)
  })

  it('offer the garden jobs also where no plant was heard in the words', async () => {
    const { path } = await opened('something small came up by the gate')
    const { text } = await get(path).expect(200)
    expect(text).not.toContain('class="offer-plant"')
    expect(text).toContain('<summary>It is not sick. I want to know how to grow it or cut it</summary>')
    expect(text).toContain('name="host" value="planting"')
  })

  it('offer the job that is asked for before the plant that it is for', async () => {
    const { path } = await opened('when do I prune my hydrangea')
    const { text } = await get(path).expect(200)
    const offered = [...text.matchAll(/class="offer-plant">([^<]*)/g)].map(([, name]) => name)
    expect(offered[0]).toBe('Pruning and cutting back')
    expect(offered).toContain('Hydrangea')
  })

  it('ask the same check as the panel, and take the same answers', async () => {
    const { path, link, html } = await atTheFirstCheck()
    const view = await world.desk.desk.showCase(link, null)
    if (view.step.kind !== 'ask') throw new Error(`the case is at ${view.step.kind}`)
    expect(html).toContain(view.step.check.ask)
    for (const answer of [...view.step.check.answers, 'not sure']) expect(html).toContain(`value="${answer.replaceAll('"', '&quot;')}"`)
    await post(`${path}/answers`, { revision: String(view.revision), check: view.step.check.id, answer: view.step.check.answers[0] ?? '' }).expect(303)
    expect((await world.desk.desk.showCase(link, null)).lines.map((line) => line.answer)).toContain(view.step.check.answers[0])
  })

  it('show the sheet as it stands, and write nothing, when a form is older than the sheet', async () => {
    const { path, link, html } = await atTheFirstCheck()
    const form = { revision: hidden(html, 'revision'), check: hidden(html, 'check') }
    await post(`${path}/answers`, { ...form, answer: 'not sure' }).expect(303)
    const stale = await post(`${path}/answers`, { ...form, answer: 'can\'t look now' }).expect(409)
    expect(stale.text).toContain('This sheet was changed elsewhere')
    expect((await world.desk.desk.showCase(link, null)).lines.map((line) => line.answer)).toContain('not sure')
    // Words that came too late stay in their field.
    const words = await post(`${path}/words`, { revision: form.revision, words: 'It began in May.' }).expect(409)
    expect(words.text).toMatch(/<textarea[^>]*>It began in May\.<\/textarea>/)
  })

  it('keep what was typed when a contact cannot be right', async () => {
    const { path, link } = await opened()
    const fields = { revision: '0', name: 'Fern', email: 'nobody at home', phone: '555-0190', note: 'Since Sunday.' }
    const reply = await post(`${path}/hand-over`, fields).expect(422)
    expect(reply.text).toContain('does not look like an email')
    for (const typed of ['value="Fern"', 'value="nobody at home"', 'value="555-0190"', '>Since Sunday.</textarea>']) expect(reply.text).toContain(typed)
    expect((await world.desk.desk.showCase(link, null)).ticket).toBeNull()
    await post(`${path}/hand-over`, { ...fields, email: '' }).expect(303)
    expect((await world.desk.desk.showCase(link, null)).ticket).toMatchObject({ state: 'waiting', contactGiven: true })
    expect((await get(path)).text).toContain('Your sheet is with a specialist')
  })

  it('take a photo by a plain file field, once, and say what is wrong with a file that is none', async () => {
    const { path, link } = await opened()
    const photo = await sharp({ create: { width: 60, height: 40, channels: 3, background: { r: 60, g: 130, b: 60 } } }).jpeg().toBuffer()
    const form = await get(`${path}?specialist=`).expect(200)
    const action = /action="([^"]*\/photos\/[^"]*)"/.exec(form.text)?.[1] ?? ''
    const send = (file: Buffer, name: string) => supertest(world.app).post(action).set('sec-fetch-site', 'same-origin').attach('photo', file, name)
    await send(photo, 'leaf.jpg').expect(303)
    await send(photo, 'leaf.jpg').expect(303)
    expect((await world.desk.desk.showCase(link, null)).photos).toHaveLength(1)
    expect((await get(`${path}?specialist=`)).text).toContain(`src="/api/cases/${link}/photos/1/small"`)

    const again = (await get(`${path}?specialist=`)).text
    const next = /action="([^"]*\/photos\/[A-Za-z0-9_-]{22})"/.exec(again)?.[1] ?? ''
    const letter = await supertest(world.app).post(next).attach('photo', Buffer.from('Dear helpline'), 'letter.jpg').expect(415)
    expect(letter.text).toContain('This file is not a photo we can open.')
    expect((await supertest(world.app).post(next).attach('photo', Buffer.alloc(0), '').expect(400)).text).toContain('Please choose a photo first.')
    await supertest(world.app).post(next).attach('photo', Buffer.alloc(12 * 1024 * 1024 + 5000), 'huge.jpg').expect(413)
    await post(`${path}/photos/1/remove`, {}).expect(303)
    expect((await world.desk.desk.showCase(link, null)).photos).toEqual([])
  })

  it('find a sheet by a link that is pasted whole or in part, and never put it into an address as a question', async () => {
    const { link } = await opened()
    for (const pasted of [link, `https://plants.larkmoor.example/case#${link}`, ` https://plants.larkmoor.example/ask/${link} `]) {
      expect((await post('/ask/find', { link: pasted }).expect(303)).headers['location']).toBe(`/ask/${link}`)
    }
    expect((await post('/ask/find', { link: 'cut-short' }).expect(422)).text).toContain('not a whole private link')
    expect((await get(`/ask/${'x'.repeat(32)}`).expect(404)).text).toContain('We cannot find this sheet')
    expect((await get('/ask/cut-short').expect(404)).text).toContain('We cannot find this sheet')
  })

  it('leave no link, word or contact in the log', async () => {
    const { path, link } = await opened('a very particular lily pad')
    await post(`${path}/hand-over`, { revision: '0', email: 'fern@larkmoor.example' }).expect(303)
    const log = world.logged.join('')
    expect(log).toContain('/ask/:hidden')
    expect(log).not.toContain(link)
    expect(log).not.toMatch(/particular lily|fern@larkmoor/)
  })

  it('say what a red flag says, at the top, and go on only when told', async () => {
    const { path, link } = await opened('my toddler ate some berries from the hedge')
    const { text } = await get(path).expect(200)
    expect(text).toContain('href="tel:5550111"')
    expect(text.indexOf('class="flag ')).toBeLessThan(text.indexOf('In your words'))
    expect(text).not.toMatch(/name="plant"|\?specialist=/)
    const reply = await post(`${path}/carry-on`, { revision: '0' }).expect(303)
    // The card is read first: the page opens at its top.
    expect(reply.headers['location']).toBe(path)
    expect((await world.desk.desk.showCase(link, null)).step.kind).toBe('place')
  })

  it('send whoever opens the address of a form back to the sheet', async () => {
    const { path } = await opened()
    for (const part of ['answers', 'photos/1/remove']) expect((await get(`${path}/${part}`).expect(303)).headers['location']).toBe(path)
  })

  it('ask a sender who opens too many cases to wait, with the words kept', async () => {
    const narrow = await openHttpWorld({ casesPerMinute: 1 })
    try {
      const send = () => supertest(narrow.app).post('/ask').type('form').send({ words: WORDS, key: 'k'.repeat(22), district: '' })
      await send().expect(303)
      expect((await send().expect(429)).text).toContain(`>${WORDS}</textarea>`)
    } finally {
      await narrow.close()
    }
  })
})
