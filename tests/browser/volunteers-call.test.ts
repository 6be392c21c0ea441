import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { newVisitor, openBrowser, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
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

/** Presses a key and waits until the sheet shows what it should. */
async function press(page: Page, key: string, shows: string | RegExp): Promise<void> {
  await page.keyboard.press(key)
  await page.getByText(shows).first().waitFor()
}

for (const { name, width, height } of widths) {
  describe(`a volunteer with a telephone, on a ${name}`, { timeout: STORY_MS }, () => {
    it('works two calls by keyboard alone, and a reload loses neither', async () => {
      const context = await newVisitor(browser, { width, height })
      const page = await context.newPage()
      // From here on no pointer is used.
      await page.goto(`${service.url}/sheet`)
      await page.getByRole('heading', { name: 'Sign in' }).waitFor()
      const account = service.passwordOf('volunteer')
      await page.keyboard.press('Tab')
      await page.keyboard.type(account.name)
      await page.keyboard.press('Tab')
      await page.keyboard.type('not the password')
      await page.keyboard.press('Enter')
      await page.getByRole('alert').waitFor()
      await page.keyboard.type(account.password)
      await page.keyboard.press('Enter')

      await page.getByRole('heading', { name: 'A new call' }).waitFor()
      await lookAt(page, 'call-blank')
      await page.keyboard.type('the outer leaves on my lettuce have yellow squares')
      await page.getByText('So far this sounds like').waitFor()
      await lookAt(page, 'call-words')
      await press(page, 'Enter', 'What is the call about?')
      await lookAt(page, 'call-plant')
      await press(page, '1', /Line 1\. Read to the caller/)
      await lookAt(page, 'call-check')
      const firstCheck = await page.locator('#check-ask').innerText()
      await press(page, '7', 'not sure')
      await page.locator('.line').first().waitFor()

      await page.keyboard.press('m')
      await page.keyboard.type('On a bus, will look tonight. 1 2 3')
      await lookAt(page, 'call-note')
      await press(page, 'Enter', 'On a bus, will look tonight. 1 2 3')
      await page.locator('.notes').waitFor()

      await page.keyboard.press('b')
      await page.keyboard.type('1')
      await page.keyboard.press('Enter')
      await expect.poll(() => page.locator('#check-ask').innerText()).toBe(firstCheck)
      await page.getByText('the answer so far').waitFor()
      await lookAt(page, 'call-line')
      await page.keyboard.press('1')
      await expect.poll(() => page.locator('.line .written').first().innerText()).not.toBe('not sure')

      await press(page, 'n', 'A new call')
      await page.keyboard.type('dog chewed the lillies')
      await page.locator('.flag').waitFor()
      await lookAt(page, 'call-red-flag-while-typing')
      await page.reload()
      await expect.poll(() => page.getByLabel('The caller’s words', { exact: true }).inputValue()).toBe('dog chewed the lillies')
      await page.keyboard.press('Escape')
      await press(page, 'o', 'On a bus, will look tonight. 1 2 3')
      await press(page, 'n', 'Two calls are open.')

      await page.keyboard.press('h')
      await page.getByLabel('Name').waitFor()
      await page.keyboard.type('Fern Moss')
      await page.keyboard.press('Tab')
      await page.keyboard.press('Tab')
      await page.keyboard.type('555 0199')
      await lookAt(page, 'call-hand-over')
      await press(page, 'Enter', 'Handed over to a specialist')
      await lookAt(page, 'call-handed-over')

      await press(page, 'e', 'Press E again to end call 1.')
      await press(page, 'e', 'Call 1 is ended.')
      await expect.poll(() => page.getByLabel('The caller’s words', { exact: true }).inputValue()).toBe('dog chewed the lillies')
      await press(page, 'Enter', 'First the card above')
      await lookAt(page, 'call-red-flag')
      await press(page, 'g', /What is the call about\?|Which plant is it\?/)
      await page.keyboard.press('p')
      await page.getByLabel('Type the plant’s name').waitFor()
      await lookAt(page, 'call-plant-by-typing')
      await page.keyboard.press('Escape')
      await page.keyboard.press('e')
      await press(page, 'e', 'Call 2 is ended.')
      await context.close()
    })

    it('can turn plain keys off', async () => {
      const context = await newVisitor(browser, { width, height })
      const page = await context.newPage()
      const account = service.passwordOf('volunteer')
      await page.request.post(`${service.url}/api/sign-in`, { data: account, headers: { origin: service.url } })
      await page.goto(`${service.url}/sheet`)
      await page.getByRole('heading', { name: 'A new call' }).waitFor()
      await page.keyboard.press('Escape')
      await page.getByLabel('Plain keys are on').focus()
      await page.keyboard.press('Space')
      await page.keyboard.press('n')
      expect(await page.locator('.call-tab').count()).toBe(1)
      await page.keyboard.press('Space')
      await page.keyboard.press('n')
      await expect.poll(() => page.locator('.call-tab').count()).toBe(2)
      await context.close()
    })
  })
}
