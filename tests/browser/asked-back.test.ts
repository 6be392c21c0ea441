import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { askQuestion, confirmBestGuess } from './asker.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

for (const size of widths) {
  describe(`an asker with a photo whom the specialist asks back, on a ${size.name}`, { timeout: STORY_MS }, () => {
    it('sends photos, looks again at what is asked, and the specialist has all of it', async () => {
      const page = await (await newVisitor(opened.browser, size)).newPage()
      await page.goto(opened.service.url)
      await askQuestion(page, 'black spots on my rose leaves and they fall off')
      await confirmBestGuess(page)
      await page.locator('#check-ask').waitFor()
      await page.getByRole('button', { name: 'Ask a specialist' }).click()

      const leaf = await sharp({ create: { width: 900, height: 600, channels: 3, background: { r: 60, g: 130, b: 60 } } }).jpeg().toBuffer()
      // The first try is lost on the way: the photo goes again by itself, and once.
      let tries = 0
      await page.route(`${opened.service.url}/api/cases/*/photos/*`, route => {
        tries += 1
        return tries === 1 ? route.abort() : route.continue()
      })
      await page.getByLabel('Add photos').setInputFiles({ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: leaf })
      await page.getByText('We try again on our own.').waitFor()
      await page.getByRole('img', { name: 'Photo 1' }).waitFor()
      await page.unroute(`${opened.service.url}/api/cases/*/photos/*`)
      await page.getByLabel('Add photos').setInputFiles({ name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('Dear helpline') })
      await page.getByText('This file is not a photo we can open.').waitFor()
      await lookAt(page, 'photos')
      // A photo that failed is asked about; one under way is waited for.
      await page.getByLabel('Is there more we should know?').fill('It began in May.')
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.getByText('A photo could not be sent.').waitFor()
      await lookAt(page, 'photo-asked-about')
      await page.getByRole('button', { name: 'Leave it out' }).click()
      await page.getByText('Your sheet is with a specialist').waitFor()

      const specialist = await newVisitor(opened.browser, size)
      const headers = { origin: opened.service.url }
      const post = (path: string, data?: object) => specialist.request.post(opened.service.url + path, { headers, ...(data === undefined ? {} : { data }) })
      await post('/api/sign-in', opened.service.passwordOf('specialist'))
      const { tickets } = await (await specialist.request.get(`${opened.service.url}/api/tickets?state=waiting`)).json() as { tickets: { ticket: string }[] }
      const ticket = tickets[0]?.ticket ?? ''
      await post(`/api/tickets/${ticket}/take`)
      await post(`/api/tickets/${ticket}/ask-back`, { text: 'Is it the same on every stem?', checks: ['leaf-underside'], photos: true })

      await page.getByRole('button', { name: 'Look for an answer' }).click()
      await page.getByRole('heading', { name: 'The specialist asks you something' }).waitFor()
      await page.getByText('Is it the same on every stem?').waitFor()
      await lookAt(page, 'asked-back')
      expect(await page.getByText('We aim to answer within').count()).toBe(0)
      await page.locator('.asked-back').getByRole('button', { name: /^Look now/ }).click()
      await page.locator('.check .answer').first().click()
      await page.getByRole('heading', { name: 'Thank you. The specialist has your answer' }).waitFor()
      await page.getByLabel('Your answer', { exact: true }).fill('Yes, on every stem.')
      await page.getByRole('button', { name: 'Send it to the specialist' }).click()
      await expect.poll(() => page.getByLabel('Your answer', { exact: true }).inputValue()).toBe('')
      await lookAt(page, 'asked-back-answered')

      const view = await (await specialist.request.get(`${opened.service.url}/api/tickets/${ticket}`)).json() as { state: string, case: { words: string[], photos: unknown[], lines: { check: { id: string } }[] } }
      expect(view.state).toBe('answered by asker')
      expect(view.case.words).toContain('Yes, on every stem.')
      expect(view.case.photos).toHaveLength(1)
      expect(view.case.lines.map(line => line.check.id)).toContain('leaf-underside')
      await specialist.close()
      await page.context().close()
    })
  })
}

// Last, and once: the sheet it leaves waiting would come before those of the stories above.
describe('an asker in a hurry', { timeout: STORY_MS }, () => {
  it('waits with the hand-over until a slow photo has arrived', async () => {
    const page = await (await newVisitor(opened.browser, widths[0])).newPage()
    await page.goto(opened.service.url)
    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    await page.getByRole('button', { name: 'Ask a specialist' }).click()
    const files = await Promise.all([1, 2, 3, 4, 5, 6, 7].map(async number => ({
      name: `${number}.jpg`, mimeType: 'image/jpeg',
      buffer: await sharp({ create: { width: 900, height: 600, channels: 3, background: { r: 60, g: 100 + 20 * number, b: 60 } } }).jpeg().toBuffer(),
    })))
    let go: () => void = () => undefined
    const held = new Promise<void>(resolve => { go = resolve })
    await page.route(`${opened.service.url}/api/cases/*/photos/*`, async route => { await held; await route.continue() })
    await page.getByLabel('Add photos').setInputFiles(files)
    await page.getByText('There was no room left for: 7.jpg.').waitFor()
    await page.getByRole('button', { name: 'Hand my sheet over' }).click()
    await page.getByText('Your photos are on their way').waitFor()
    expect(await page.getByText('Your sheet is with a specialist').count()).toBe(0)
    await lookAt(page, 'photos-waited-for')
    go()
    await page.getByText('Your sheet is with a specialist').waitFor()
    await page.getByRole('img', { name: 'Photo 6' }).waitFor()
    await page.context().close()
  })
})
