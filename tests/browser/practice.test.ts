import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'
import { wholeGuide } from '../whole-guide.js'

const opened = openedForTests()

describe('a new volunteer', { timeout: 2 * STORY_MS }, () => {
  it('trains on a past case by keys alone, hears what the caller says, and is told how it went', async () => {
    const page = await (await newVisitor(opened.browser, widths[1])).newPage()
    page.setDefaultTimeout(30_000)
    await page.request.post(`${opened.service.url}/api/sign-in`, { data: opened.service.passwordOf('volunteer'), headers: { origin: opened.service.url } })
    // One worked case that is sure to be drawn: every other one counts as done.
    const { practice } = await (await page.request.get(`${opened.service.url}/api/practice/lettuce-001`)).json() as { practice: string }
    const names = (await wholeGuide()).casebook.map(({ id }) => id)
    await page.goto(`${opened.service.url}/sheet`)
    await page.evaluate(done => localStorage.setItem('frondline practised', JSON.stringify(done)), names.filter(name => name !== practice))
    await page.getByRole('heading', { name: 'A new call' }).waitFor()
    await page.keyboard.press('Escape')
    await page.keyboard.press('t')
    await page.getByRole('heading', { name: 'A practice call' }).waitFor()
    await page.getByText('Practice: the caller says').waitFor()
    await lookAtBoth(page, 'practice-blank')
    await page.keyboard.type('my lettuces have all shot up tall and gone bitter')
    await page.keyboard.press('Enter')
    await page.getByText('What is the call about?').waitFor()
    await page.keyboard.press('1')
    await page.locator('#check-ask, .advice').first().waitFor()
    let looked = false
    for (let line = 0; line < 12 && await page.locator('#check-ask').count() > 0; line += 1) {
      const ask = await page.locator('#check-ask').innerText()
      const said = await page.locator('.caller-says .written').innerText()
      if (!looked) await lookAtBoth(page, 'practice-check')
      looked = true
      const labels = await page.locator('.answer-words').allInnerTexts()
      const place = labels.findIndex(label => label.toLowerCase() === said.toLowerCase())
      await page.keyboard.press(place < 0 || place > 5 ? '7' : String(place + 1))
      await page.waitForFunction(before => document.querySelector('#check-ask')?.textContent !== before, ask)
    }
    await page.getByRole('heading', { name: 'How it went' }).waitFor()
    await page.getByText('Right.').waitFor()
    await lookAtBoth(page, 'practice-end')
    // Nothing of it reaches a specialist, and there is no key for it.
    expect(await page.getByText('Hand over to a specialist').count()).toBe(0)
    await page.context().close()
  })
})

async function lookAtBoth(page: Page, name: string): Promise<void> {
  for (const { width, height } of widths) {
    await page.setViewportSize({ width, height })
    await lookAt(page, name)
  }
}
