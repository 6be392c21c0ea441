import { describe, expect, it } from 'vitest'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

// A service of its own: it will not let anybody in from this address for a while.

const opened = openedForTests()

for (const { name, width, height } of widths) {
  describe(`signing in, on a ${name}`, { timeout: STORY_MS }, () => {
    it('tells somebody who mistyped the password too often how long to wait', async () => {
      const context = await newVisitor(opened.browser, { width, height })
      const page = await context.newPage()
      await page.goto(`${opened.service.url}/sign-in`)
      for (let tries = 0; tries < 20 && await page.getByText(/Wait \d+ seconds/).count() === 0; tries++) {
        await page.getByLabel('Name').fill('willow')
        await page.getByLabel('Password').fill('wrong')
        await page.keyboard.press('Enter')
        await page.getByRole('button', { name: 'Sign in' }).waitFor()
        await page.getByRole('alert').waitFor()
        await expect.poll(() => page.getByLabel('Password').inputValue()).toBe('')
      }
      expect(await page.getByRole('alert').innerText()).toMatch(/^There were too many failed sign-ins\. Wait \d+ seconds and try again\.$/)
      await lookAt(page, 'sign-in-paused')
      await context.close()
    })
  })
}
