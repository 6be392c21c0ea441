import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { newVisitor, openBrowser, STORY_MS, widths } from './browser.js'
import { faultsSeenByAxe } from './looking.js'
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

describe('looking at a screen', { timeout: STORY_MS }, () => {
  it('sees pale text and a field without a name inside the panel', async () => {
    const page = await (await newVisitor(browser, widths[0])).newPage()
    await page.goto(service.url)
    await page.getByLabel('Your question').waitFor()
    expect(await faultsSeenByAxe(page)).toEqual([])
    await page.evaluate(() => {
      const root = document.querySelector('frondline-panel')?.shadowRoot
      const lead = root?.querySelector<HTMLElement>('#question-lead')
      if (lead != null) lead.style.color = '#ccc'
      root?.querySelector('label[for="question-words"]')?.remove()
    })
    expect((await faultsSeenByAxe(page)).map(fault => fault.split(':')[0]).sort()).toEqual(['color-contrast', 'label'])
    await page.context().close()
  })
})
