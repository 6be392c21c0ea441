import sharp from 'sharp'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark, lookOnPaper } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

for (const { name, width, height } of widths) {
  describe(`an asker whose browser runs no script, on a ${name}`, { timeout: STORY_MS }, () => {
    let context: BrowserContext
    let twin: Page
    beforeAll(async () => {
      context = await opened.browser.newContext({ viewport: { width, height }, javaScriptEnabled: false })
      const looking = await opened.browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' })
      for (const each of [context, looking]) each.setDefaultTimeout(15_000)
      twin = await looking.newPage()
      await twin.goto(`${opened.service.url}/ask`)
    })
    afterAll(async () => { await context.close(); await twin.context().close() })

    /** The same page, drawn where axe can run: it needs script, the page has none. */
    const look = async (page: Page, as: string, everyWay = false): Promise<void> => {
      expect(await page.content()).not.toContain('<script')
      await twin.setContent(await page.content())
      await lookAt(twin, `plain-${as}`)
      if (everyWay) {
        await lookInTheDark(twin, `plain-${as}`)
        await lookOnPaper(twin, `plain-${as}`)
      }
    }
    const visit = async (): Promise<Page> => {
      const page = await context.newPage()
      await page.goto(opened.service.url)
      await page.getByRole('link', { name: 'Ask your question on plain pages' }).click()
      await page.getByRole('heading', { name: 'What is wrong with your plant?' }).waitFor()
      return page
    }
    const ask = async (page: Page, words: string): Promise<void> => {
      await page.getByLabel('Your question').fill(words)
      await page.getByRole('button', { name: 'Start the sheet' }).click()
    }

    it('asks, answers, changes an answer, and reads the advice', async () => {
      const page = await visit()
      await look(page, 'opening')
      await page.getByRole('button', { name: 'Start the sheet' }).click()
      await page.locator('.field .fault').waitFor()
      await look(page, 'empty-question')
      await page.getByLabel('Where is the plant?').selectOption('Holt Fen')
      await ask(page, 'bits are missing from my rose leaves')
      await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
      await look(page, 'plant-heard')
      await page.locator('.offer').first().click()
      await page.locator('#check-ask').waitFor()
      expect(await page.title()).toContain(await page.locator('#check-ask').innerText())
      await look(page, 'first-check')

      await page.locator('.answers.calm .answer').first().click()
      await page.locator('.line .written', { hasText: 'not sure' }).waitFor()
      await page.getByRole('link', { name: /^Change your answer to/ }).first().click()
      await page.locator('.answer.marked').waitFor()
      await look(page, 'line-opened-again')
      await page.getByRole('link', { name: 'Keep my answer' }).click()

      const seen = ['smooth notches from the edge', 'neat half circles or ovals, as if punched', 'no spots', 'leaves', 'holes or chewed edges']
      for (let asked = 0; asked < 14 && await page.locator('#check-ask').count() > 0; asked++) {
        const labels = await page.locator('.answers:not(.calm) .answer-words').allInnerTexts()
        const place = labels.findIndex(label => seen.includes(label.toLowerCase()))
        await (place < 0 ? page.getByRole('button', { name: 'Not sure' }) : page.locator('.answers:not(.calm) .answer').nth(place)).click()
        await page.waitForLoadState()
      }
      // Megachile on roses: leave alone, no spray. Royal Horticultural Society, 'Leafcutter bees' (advice page); from memory.
      expect(await page.locator('.bottom-line').innerText()).toMatch(/^Leave it alone/)
      await look(page, 'advice', true)
      await page.getByRole('link', { name: 'This does not fit. Ask a specialist' }).click()
      await page.getByRole('heading', { name: 'Ask a specialist' }).waitFor()
      expect(await context.cookies()).toEqual([])
      await page.close()
    })

    it('sees what to do first when a child has eaten berries, and goes on only then', async () => {
      const page = await visit()
      await ask(page, 'my toddler ate some berries from the hedge')
      const card = page.locator('.flag')
      await card.waitFor()
      expect(await card.locator('a[href="tel:5550111"]').count()).toBe(1)
      expect(await page.locator('.label, .line, .offer').count()).toBe(0)
      await look(page, 'red-flag')
      await page.getByRole('button', { name: 'Go on with my plant question' }).click()
      await page.getByRole('heading', { name: 'What else do you want to know?' }).waitFor()
      expect(await page.locator('.offer').allInnerTexts()).toEqual([expect.stringContaining('If a plant did it: which one, and what to do about it')])
      expect(await card.count()).toBe(1)
      await page.getByLabel('Choose the plant').selectOption('Tomato')
      await page.getByRole('button', { name: 'Go on', exact: true }).click()
      await page.getByRole('heading', { name: 'What is wrong with the tomato?' }).waitFor()
      await look(page, 'complaints')
      await page.getByRole('button', { name: 'None of these, or I cannot say' }).click()
      await page.locator('#check-ask').waitFor()
      await page.close()
    })

    it('hands over with a photo and a contact, is asked back, and reads the answer by the private link', async () => {
      const page = await visit()
      await ask(page, `black spots on my rose leaves, seen on a ${name}`)
      await page.locator('.offer').first().click()
      await page.locator('#check-ask').waitFor()
      await page.getByRole('button', { name: 'Can’t look now' }).click()
      await page.locator('.line .written', { hasText: 'can\'t look now' }).waitFor()
      await page.getByRole('link', { name: /^(Ask a specialist|This does not fit)/ }).first().click()
      await page.getByRole('heading', { name: 'Ask a specialist' }).waitFor()
      const leaf = await sharp({ create: { width: 900, height: 600, channels: 3, background: { r: 60, g: 130, b: 60 } } }).jpeg().toBuffer()
      await page.getByLabel('Choose a photo').setInputFiles({ name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('Dear helpline') })
      await page.getByRole('button', { name: 'Add this photo' }).click()
      await page.locator('#fault-photo').waitFor()
      await page.getByLabel('Choose a photo').setInputFiles({ name: 'leaf.jpg', mimeType: 'image/jpeg', buffer: leaf })
      await page.getByRole('button', { name: 'Add this photo' }).click()
      await page.getByRole('img', { name: 'Photo 1' }).waitFor()
      await page.getByLabel('Email').fill('nobody@home')
      await page.getByLabel('Is there more we should know?').fill('It came back after I cut it down.')
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.locator('#fault-email').waitFor()
      await look(page, 'hand-over-fault')
      expect(await page.getByLabel('Is there more we should know?').inputValue()).toBe('It came back after I cut it down.')
      await page.getByLabel('Email').fill('')
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.getByRole('heading', { name: 'Your sheet is with a specialist' }).waitFor()
      await look(page, 'waiting')
      const link = await page.getByLabel('Your private link').inputValue()

      const specialist = await opened.browser.newContext()
      const post = (path: string, data?: object) => specialist.request.post(opened.service.url + path, { headers: { origin: opened.service.url }, ...(data === undefined ? {} : { data }) })
      await post('/api/sign-in', opened.service.passwordOf('specialist'))
      const { tickets } = await (await specialist.request.get(`${opened.service.url}/api/tickets?words=${encodeURIComponent(`seen on a ${name}`)}`)).json() as { tickets: { ticket: string }[] }
      const ticket = `/api/tickets/${tickets[0]?.ticket ?? ''}`
      await post(`${ticket}/take`)
      await post(`${ticket}/ask-back`, { text: 'Is it the same on every stem?', checks: ['leaf-underside'], photos: true })
      await page.getByRole('link', { name: 'Look for an answer' }).click()
      await page.getByRole('heading', { name: 'The specialist asks you something' }).waitFor()
      await look(page, 'asked-back')
      await page.locator('.asked-back').getByRole('link', { name: /^Look now/ }).click()
      await page.locator('.answers:not(.calm) .answer').first().click()
      await page.getByRole('heading', { name: 'Thank you. The specialist has your answer' }).waitFor()
      await page.getByLabel('Your answer', { exact: true }).fill('Yes, on every stem.')
      await page.getByRole('button', { name: 'Send it to the specialist' }).click()
      await page.getByText('Yes, on every stem.').waitFor()
      await post(`${ticket}/settle`, { text: 'Thank you.\n\nPick the fallen leaves up.', outcome: { kind: 'not known' } })
      await page.goto(`${opened.service.url}/ask`)
      await page.getByLabel('Your private link').fill(link)
      await page.getByRole('button', { name: 'Open my sheet' }).click()
      await page.getByRole('heading', { name: 'We do not know what it is' }).waitFor()
      await page.getByText('Pick the fallen leaves up.').waitFor()
      await look(page, 'reply')
      await specialist.close()
      await page.close()
    })
  })
}
