import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

/** Presses a key and waits until the sheet shows what it should. */
async function press(page: Page, key: string, shows: string | RegExp): Promise<void> {
  await page.keyboard.press(key)
  await page.getByText(shows).first().waitFor()
}

for (const { name, width, height } of widths) {
  describe(`a volunteer with a telephone, on a ${name}`, { timeout: STORY_MS }, () => {
    it('works two calls by keyboard alone, and a reload loses neither', async () => {
      const context = await newVisitor(opened.browser, { width, height })
      const page = await context.newPage()
      // From here on no pointer is used.
      await page.goto(`${opened.service.url}/sheet`)
      await page.getByRole('heading', { name: 'Sign in' }).waitFor()
      const account = opened.service.passwordOf('volunteer')
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
      await lookInTheDark(page, 'call-check')
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
      await page.getByText(/Undo the last answer: /).waitFor()
      await page.keyboard.press('u')
      await expect.poll(() => page.locator('.line .written').first().innerText()).toBe('not sure')

      await press(page, 'n', 'A new call')
      await page.keyboard.type('dog chewed the lillies')
      await page.locator('.flag').waitFor()
      await lookAt(page, 'call-red-flag-while-typing')
      await page.reload()
      await expect.poll(() => page.getByLabel('The caller’s words', { exact: true }).inputValue()).toBe('dog chewed the lillies')
      await page.keyboard.press('Escape')
      await press(page, 'o', 'On a bus, will look tonight. 1 2 3')
      await press(page, 'n', 'Two calls are open.')

      await press(page, 'h', 'Press H again to hand this call over')
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

    it('acts on a key only where its label stands, and never loses the focus', async () => {
      const context = await newVisitor(opened.browser, { width, height })
      const page = await context.newPage()
      await page.request.post(`${opened.service.url}/api/sign-in`, { data: opened.service.passwordOf('volunteer'), headers: { origin: opened.service.url } })
      await page.goto(`${opened.service.url}/sheet`)
      await page.getByRole('heading', { name: 'A new call' }).waitFor()
      const focused = () => page.evaluate(() => document.activeElement?.closest('[data-keys] .sheet, .call-tabs') === null ? document.activeElement?.tagName ?? 'nothing' : 'the sheet')
      await page.keyboard.type('the outer leaves on my lettuce have yellow squares')
      await press(page, 'Enter', 'What is the call about?')
      await press(page, '1', /Read to the caller/)
      expect(await page.evaluate(() => document.activeElement?.className)).toContain('answer')
      const lines = () => page.locator('.line').count()
      const before = await lines()

      // With the focus on nothing, or on what is not the sheet, no key does anything.
      for (const away of ['body', '.masthead button']) {
        await page.evaluate(where => {
          const target = document.querySelector<HTMLElement>(where)
          if (where === 'body') (document.activeElement as HTMLElement | null)?.blur()
          else target?.focus()
        }, away)
        for (const key of ['1', '7', 'h', 'h', 'e', 'e', 'n', 'u']) await page.keyboard.press(key)
        expect([away, await lines(), await page.locator('.call-tab').count(), await page.locator('.hand-over').count(), await page.getByText(/Press [EH] again/).count()]).toEqual([away, before, 1, 0, 0])
      }
      // In the list of keys the letters stand, the answers' numbers do not.
      await page.locator('.key-board button').first().focus()
      await page.keyboard.press('1')
      expect(await lines()).toBe(before)

      await page.keyboard.press('Escape')
      expect(await focused()).toBe('the sheet')
      const check = await page.locator('#check-ask').innerText()
      await page.keyboard.press('7')
      await expect.poll(lines).toBe(before + 1)
      expect(await focused()).toBe('the sheet')
      // A line that was empty before is empty again, and its check is asked anew.
      await page.keyboard.press('u')
      await expect.poll(lines).toBe(before)
      await expect.poll(() => page.locator('#check-ask').innerText()).toBe(check)

      await press(page, 'n', 'A new call')
      await page.keyboard.press('Escape')
      expect(await focused()).toBe('the sheet')
      await press(page, 'o', check)
      expect(await focused()).toBe('the sheet')
      await press(page, 'h', 'Press H again to hand this call over')
      await page.keyboard.press('Escape')
      await page.getByText('Press H again').waitFor({ state: 'detached' })
      expect(await page.locator('.hand-over').count()).toBe(0)
      await press(page, 'e', 'Press E again')
      await press(page, 'e', 'is ended.')
      await expect.poll(focused).toBe('the sheet')
      await page.keyboard.press('Escape')
      await press(page, 'e', 'Press E again')
      await press(page, 'e', 'is ended.')
      await expect.poll(focused).toBe('the sheet')
      await context.close()
    })

    it('can turn plain keys off', async () => {
      const context = await newVisitor(opened.browser, { width, height })
      const page = await context.newPage()
      const account = opened.service.passwordOf('volunteer')
      await page.request.post(`${opened.service.url}/api/sign-in`, { data: account, headers: { origin: opened.service.url } })
      await page.goto(`${opened.service.url}/sheet`)
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
