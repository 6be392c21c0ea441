import { describe, expect, it } from 'vitest'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { faultsSeenByAxe } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

describe('looking at a screen', { timeout: STORY_MS }, () => {
  it('sees pale text and a field without a name inside the panel', async () => {
    const page = await (await newVisitor(opened.browser, widths[0])).newPage()
    await page.goto(opened.service.url)
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
