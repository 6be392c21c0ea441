import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answerChecks, askQuestion, confirmBestGuess } from './asker.js'
import { newVisitor, openBrowser, STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark, lookOnPaper } from './looking.js'
import { startTestService, type TestService } from './running-service.js'

let service: TestService
let browser: Browser
beforeAll(async () => {
  service = await startTestService()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

for (const { name, width, height } of widths) {
  describe(`an asker at the parish garden page, on a ${name}`, { timeout: STORY_MS }, () => {
    const visit = async (path = '/'): Promise<Page> => {
      const context = await newVisitor(browser, { width, height })
      const page = await context.newPage()
      await page.goto(service.url + path)
      return page
    }

    it('is told to leave the leafcutter bees alone, and why', async () => {
      const page = await visit()
      await page.getByLabel('Your question').waitFor()
      await lookAt(page, 'empty-sheet')
      await page.getByRole('button', { name: 'Start the sheet' }).click()
      await page.getByText('Please write a few words').waitFor()
      await lookAt(page, 'empty-question')

      await page.getByLabel('Where is the plant?').selectOption('Holt Fen')
      await askQuestion(page, 'bits are missing from my rose leaves')
      await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
      await expect.poll(() => page.locator('.offer').first().innerText()).toContain('Rose')
      await lookAt(page, 'plant-heard')
      await confirmBestGuess(page)
      await page.locator('#check-ask').waitFor()
      await lookAt(page, 'first-check')
      expect(await page.evaluate(() => document.querySelector('frondline-panel')?.shadowRoot?.activeElement?.id)).toBe('check-ask')

      await answerChecks(page, ['smooth notches from the edge', 'neat half circles or ovals, as if punched', 'no spots', 'leaves', 'holes or chewed edges'])
      await page.locator('.advice').waitFor()
      // Megachile on roses: leave alone, no spray. Royal Horticultural Society, 'Leafcutter bees' (advice page); from memory.
      expect(await page.locator('.bottom-line').innerText()).toMatch(/^Leave it alone/)
      expect(await page.locator('.sureness').innerText()).toMatch(/very likely|almost certain|extremely likely|likely/)
      expect(await page.locator('.reason-list').first().innerText()).toContain('smooth notches from the edge')
      expect(await page.locator('.sources').innerText()).not.toBe('')
      await lookAt(page, 'advice')
      await lookInTheDark(page, 'advice')
      await lookOnPaper(page, 'advice')

      await page.getByRole('button', { name: /^Change your answer to/ }).first().click()
      await expect.poll(() => page.locator('.answer.marked').innerText()).toMatch(/smooth notches from the edge/i)
      await lookAt(page, 'line-opened-again')
      await page.getByRole('button', { name: 'Keep my answer' }).click()
      await page.locator('.advice').waitFor()
      await page.context().close()
    })

    it('sees what to do first when a child has eaten berries, and may then go on', async () => {
      const page = await visit()
      await askQuestion(page, 'my toddler ate some berries from the hedge')
      const card = page.getByRole('alert')
      await card.waitFor()
      expect(await card.innerText()).toContain('555-0111')
      expect(await card.locator('a[href="tel:5550111"]').count()).toBe(1)
      const order = await card.evaluate(element => [...element.querySelectorAll('.flag-do, .flag-calls, .flag-not')].map(part => part.className))
      expect(order).toEqual(['flag-do', 'flag-calls', 'flag-not'])
      await lookAt(page, 'red-flag')
      await lookInTheDark(page, 'red-flag')
      await lookOnPaper(page, 'red-flag')
      // Nothing of the plant while a child may be in danger, and afterwards no guess from one word.
      await page.getByText('When everyone is safe, you can still ask about the plant.').waitFor()
      expect(await page.locator('.label, .line, .offer').count()).toBe(0)
      expect(await page.getByRole('button', { name: 'Ask a specialist' }).count()).toBe(0)
      await page.getByRole('button', { name: 'Go on with my plant question' }).click()
      await page.getByRole('heading', { name: 'Which plant is it about?' }).waitFor()
      expect(await page.locator('.offer').count()).toBe(0)
      await lookAt(page, 'after-red-flag')
      expect(await page.locator('.flag').count()).toBe(1)
      await page.reload()
      await page.locator('.flag').waitFor()
      // After a reload the card still stands there, but does not shout again.
      expect(await page.getByRole('alert').count()).toBe(0)
      await page.context().close()
    })

    it('picks plant and complaint by typing when we heard it wrong, and can change it later', async () => {
      const page = await visit()
      await askQuestion(page, 'black spots on the leaves of my rose')
      await page.getByRole('button', { name: 'Something else', exact: true }).click()
      const plant = page.getByLabel('Type the plant’s name')
      await plant.fill('tomat')
      await page.getByRole('button', { name: 'Tomato', exact: true }).waitFor()
      await lookAt(page, 'plant-by-typing')
      await plant.press('Enter')
      await page.getByLabel('What is wrong with the tomato?').waitFor()
      await lookAt(page, 'complaint-by-typing')
      await page.getByRole('button', { name: 'None of these, or I cannot say' }).click()
      await page.locator('#check-ask').waitFor()
      expect(await page.locator('.label').innerText()).toContain('Tomato')
      await page.getByRole('button', { name: 'Change the plant or the trouble' }).click()
      await page.getByLabel('Type the plant’s name').waitFor()
      await page.getByRole('button', { name: 'Leave it as it was' }).click()
      await page.locator('#check-ask').waitFor()
      await page.context().close()
    })

    it('hands the sheet over without a contact, and reads the specialist’s answer by the private link', async () => {
      const page = await visit()
      await askQuestion(page, 'black spots on my rose leaves and they fall off')
      await confirmBestGuess(page)
      await page.locator('#check-ask').waitFor()
      await page.getByRole('button', { name: 'Can’t look now' }).click()
      await page.locator('.line .written', { hasText: "can't look now" }).waitFor()
      await page.getByRole('button', { name: /^(Ask a specialist|This does not fit)/ }).click()
      await page.getByRole('heading', { name: 'Ask a specialist' }).waitFor()
      await lookAt(page, 'hand-over')
      await page.getByLabel('Email').fill('nobody at home')
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.getByText('does not look like an email').waitFor()
      await lookAt(page, 'hand-over-fault')
      await page.getByLabel('Email').fill('')
      await page.getByLabel('Is there more we should know?').fill('It came back after I cut it down last year.')
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.getByText('Your sheet is with a specialist').waitFor()
      await lookAt(page, 'waiting')
      const link = await page.getByLabel('Your private link').inputValue()
      await page.context().close()

      const bench = await visit('/sign-in?next=/bench')
      const { name, password } = service.passwordOf('specialist')
      await bench.getByLabel('Name').fill(name)
      await bench.getByLabel('Password').fill(password)
      await lookAt(bench, 'sign-in')
      await bench.keyboard.press('Enter')
      await bench.getByRole('heading', { name: /^Waiting/ }).waitFor()
      await bench.locator('.ledger-row').first().waitFor()
      await lookAt(bench, 'bench-list')
      await bench.keyboard.press('d')
      await bench.keyboard.press('Enter')
      await bench.getByText('It came back after I cut it down').waitFor()
      await lookAt(bench, 'bench-ticket')
      await bench.keyboard.press('t')
      await bench.getByText('With sedge').waitFor()
      await bench.keyboard.press('a')
      await bench.getByRole('heading', { name: 'Your answer' }).waitFor()
      await bench.locator('.problem-line', { hasText: 'Rose black spot' }).waitFor()
      await bench.keyboard.type('black spot')
      await bench.keyboard.press('Enter')
      await expect.poll(() => bench.getByLabel('What the asker will read').inputValue()).toContain('fallen leaves')
      // What is begun is kept while the form is left; opened again it starts in the text, where a greeting goes.
      await bench.keyboard.press('Escape')
      await bench.getByRole('heading', { name: 'Your answer' }).waitFor({ state: 'detached' })
      await bench.keyboard.press('a')
      await bench.getByRole('heading', { name: 'Your answer' }).waitFor()
      const text = bench.getByLabel('What the asker will read')
      await expect.poll(() => text.evaluate(field => field.matches(':focus'))).toBe(true)
      await bench.keyboard.type('Thank you for the careful sheet.\n\n')
      await lookAt(bench, 'bench-answer')
      await bench.keyboard.press('Control+Enter')
      // Nothing goes out before it was read once more as the asker will read it.
      await bench.getByRole('heading', { name: 'Read it once more' }).waitFor()
      expect(await bench.locator('.as-read').innerText()).toMatch(/Rose black spot\s+Thank you for the careful sheet\./)
      expect(await bench.getByText(/^Settled by/).count()).toBe(0)
      await lookAt(bench, 'bench-review')
      await bench.keyboard.press('Control+Enter')
      await bench.getByText(/^Settled/).waitFor()
      await lookAt(bench, 'bench-settled')
      await bench.context().close()

      const back = await visit(link.slice(service.url.length))
      await back.getByRole('heading', { name: 'Rose black spot' }).waitFor()
      expect(await back.locator('.letter').innerText()).toMatch(/^Thank you for the careful sheet\./)
      await lookAt(back, 'answer-read')
      await back.context().close()
    })

    it('is told kindly when a private link leads nowhere', async () => {
      const page = await visit('/case#cut-short')
      await page.getByText('We cannot find this sheet.').waitFor()
      await lookAt(page, 'link-leads-nowhere')
      await page.context().close()
    })
  })
}
