import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CaseView, photoAddress, PhotoKept } from '../../shared/index.js'
import { heic, phoneJpeg, png } from '../photos/pictures.js'
import { type HttpWorld, openCase, openHttpWorld, problemOf } from './http-world.js'

const KEY = 'leaf-from-below-01'

describe('sending and showing photos', () => {
  let world: HttpWorld
  beforeAll(async () => {
    world = await openHttpWorld({ panelOrigins: ['https://parish.example'] })
  })
  afterAll(() => world.close())

  const put = (link: string, key: string, file: Buffer, type = 'image/jpeg') => supertest(world.app)
    .put(`/api/cases/${link}/photos/${key}`).set('content-type', type).send(file)

  async function caseWithPhoto(): Promise<string> {
    const { link } = await openCase(world.app, 'my lettuce is yellow')
    await put(link, KEY, await phoneJpeg()).expect(200)
    return link
  }

  it('takes the file as it is, whatever its content type says, and answers its number and the case', async () => {
    const { link } = await openCase(world.app, 'my lettuce is yellow')
    const first = PhotoKept.parse((await put(link, KEY, await phoneJpeg(), 'text/html').expect(200)).body)
    const second = PhotoKept.parse((await put(link, 'leaf-from-above-02', await png()).expect(200)).body)
    expect([first.photo, second.photo]).toEqual([1, 2])
    expect(second.case.photos).toMatchObject([
      { photo: 1, width: 40, height: 60, from: 'asker' }, { photo: 2, width: 60, height: 40, from: 'asker' },
    ])
    expect(CaseView.parse((await supertest(world.app).get(`/api/cases/${link}`)).body)).toEqual(second.case)
  })

  it('shows both sizes as JPEG that runs nothing, goes into no shared cache, and is fetched once', async () => {
    const link = await caseWithPhoto()
    for (const size of ['large', 'small'] as const) {
      const reply = await supertest(world.app).get(photoAddress(link, 1, size)).expect(200)
      expect(reply.headers).toMatchObject({
        'content-type': 'image/jpeg', 'x-content-type-options': 'nosniff', 'cache-control': 'private, max-age=300',
        'content-security-policy': "default-src 'none'; sandbox", 'content-disposition': 'inline; filename="photo.jpg"',
        'cross-origin-resource-policy': 'cross-origin',
      })
      expect((reply.body as Buffer).subarray(0, 3)).toEqual(Buffer.from([0xff, 0xd8, 0xff]))
      await supertest(world.app).get(photoAddress(link, 1, size)).set('if-none-match', reply.headers['etag'] ?? '').expect(304)
    }
  })

  it('shows a photo to nobody without the link of its own case', async () => {
    const link = await caseWithPhoto()
    const other = await openCase(world.app, 'my rose has spots')
    const specialist = await world.signedIn('sedge', 'specialist')
    for (const wrong of ['x'.repeat(32), other.link]) {
      const reply = await supertest(world.app).get(photoAddress(wrong, 1, 'large')).expect(404)
      expect(problemOf(reply).code).toBe('PHOTO_NOT_FOUND')
      await specialist.get(photoAddress(wrong, 1, 'small')).expect(404)
    }
    await specialist.get(photoAddress(link, 1, 'large')).expect(200)
    for (const wrong of ['0', '2', '01', '1e0', '-1', 'x', '99999']) {
      await supertest(world.app).get(`/api/cases/${link}/photos/${wrong}/large`).expect(404)
    }
  })

  it('answers the same photo to the same upload key, without reading the file again', async () => {
    const link = await caseWithPhoto()
    const again = PhotoKept.parse((await put(link, KEY, Buffer.from('the rest was lost on the way')).expect(200)).body)
    expect([again.photo, again.case.photos.length, again.case.revision]).toEqual([1, 1, 1])
  })

  it.each([
    ['a case that is not there', 'x'.repeat(32), KEY, 404, 'CASE_NOT_FOUND'],
    ['an upload key that is too short', '', 'short', 400, 'UPLOAD_KEY_DOES_NOT_FIT'],
    ['an upload key with other signs', '', 'leaf/../../etc/passwd', 404, 'NO_SUCH_PLACE'],
  ])('refuses %s', async (_name, wrongLink, key, status, code) => {
    const { link } = await openCase(world.app, 'my lettuce')
    const reply = await put(wrongLink === '' ? link : wrongLink, key, await png()).expect(status)
    expect(problemOf(reply).code).toBe(code)
  })

  it('says kindly what to do about a format of newer phones, and what it takes', async () => {
    const { link } = await openCase(world.app, 'my lettuce')
    const phone = problemOf(await put(link, KEY, heic()).expect(415))
    expect(phone).toMatchObject({ code: 'PHOTO_IN_PHONE_FORMAT', detail: expect.stringContaining('Choose it again from this page on the phone') as string })
    const words = problemOf(await put(link, KEY, Buffer.from('hello')).expect(415))
    expect(words).toMatchObject({ code: 'PHOTO_NOT_A_PICTURE', detail: expect.stringContaining('JPEG, PNG or WebP') as string })
    expect(problemOf(await put(link, KEY, (await phoneJpeg(300, 300)).subarray(0, 2000)).expect(422)).code).toBe('PHOTO_BROKEN')
  })

  it('refuses a file of more than 12 MB, by its announced length and by what really comes', async () => {
    const { link } = await openCase(world.app, 'my lettuce')
    const announced = await put(link, KEY, Buffer.alloc(12 * 1024 * 1024 + 1)).expect(413)
    expect(problemOf(announced)).toMatchObject({ code: 'FILE_TOO_LARGE', detail: 'This file is larger than 12 MB. Send a smaller one.' })
    // In pieces, so that no length is announced.
    const pieces = supertest(world.app).put(`/api/cases/${link}/photos/${KEY}`)
    for (let megabyte = 0; megabyte < 13; megabyte++) pieces.write(Buffer.alloc(1024 * 1024))
    expect(problemOf(await pieces.expect(413)).code).toBe('FILE_TOO_LARGE')
    const shown = CaseView.parse((await supertest(world.app).get(`/api/cases/${link}`)).body)
    expect(shown.photos).toEqual([])
  })

  it('lets the asker remove a photo before hand-over', async () => {
    const link = await caseWithPhoto()
    const reply = await supertest(world.app).post(`/api/cases/${link}/photos/1/remove`).expect(200)
    expect(CaseView.parse(reply.body).photos).toEqual([])
    await supertest(world.app).get(photoAddress(link, 1, 'large')).expect(404)
    await supertest(world.app).post(`/api/cases/${link}/photos/1/remove`).expect(200)
    expect(problemOf(await supertest(world.app).post(`/api/cases/${link}/photos/2/remove`).expect(404)).code).toBe('PHOTO_NOT_FOUND')
  })

  it('takes photos from the panel on listed pages', async () => {
    const { link } = await openCase(world.app, 'my lettuce')
    const asked = await supertest(world.app).options(`/api/cases/${link}/photos/${KEY}`)
      .set('origin', 'https://parish.example').set('access-control-request-method', 'PUT').expect(204)
    expect(asked.headers['access-control-allow-methods']).toBe('GET, POST, PUT')
    const sent = await put(link, KEY, await png()).set('origin', 'https://parish.example').expect(200)
    expect(sent.headers['access-control-allow-origin']).toBe('https://parish.example')
  })

  it('writes neither the link nor the upload key into the log', async () => {
    const link = await caseWithPhoto()
    await supertest(world.app).get(photoAddress(link, 1, 'small')).expect(200)
    const all = world.logged.join('')
    expect(all).toContain('/api/cases/:hidden/photos/1/small')
    expect(all).not.toContain(link)
    expect(all).not.toContain(KEY)
  })
})
