import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { askQuestion } from './asker.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

/** A visit on which the real service's first replies say this of how well they heard: whatever the matching is tuned to, the screen is tried. */
async function visit({ width, height }: { width: number, height: number }, heard: { confidence: number, outOfScope: boolean, hosts?: [] }): Promise<Page> {
  const context = await newVisitor(opened.browser, { width, height })
  const page = await context.newPage()
  await page.route(`${opened.service.url}/api/cases`, async route => {
    const reply = await route.fetch()
    const view = await reply.json() as { place: object }
    await route.fulfill({ response: reply, json: { ...view, place: { ...view.place, ...heard } } })
  })
  await page.goto(opened.service.url)
  return page
}

for (const size of widths) {
  describe(`words that were not heard well, on a ${size.name}`, { timeout: STORY_MS }, () => {
    it('are met with the best few alike', async () => {
      const page = await visit(size, { confidence: 0.3, outOfScope: false })
      await askQuestion(page, 'my rose looks odd, black spots or something')
      await page.getByRole('heading', { name: 'Which of these comes nearest?' }).waitFor()
      expect(await page.locator('.offer').count()).toBeGreaterThan(1)
      expect(await page.locator('.offer.first').count()).toBe(0)
      expect(await page.getByText('Our best guess').count()).toBe(0)
      await lookAt(page, 'unsure')
      await page.context().close()
    })

    it('are met with the plant alone where they tell of no trouble, and with a way to ask a person', async () => {
      const page = await (await newVisitor(opened.browser, size)).newPage()
      await page.goto(opened.service.url)
      await askQuestion(page, 'Hello, it is about my hydrangea.')
      await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
      expect(await page.locator('.offer').allInnerTexts()).toEqual([expect.stringMatching(/^Hydrangea\s+we will ask what you see/)])
      await lookAt(page, 'no-trouble-told')
      await page.getByRole('button', { name: 'It is not sick. I want to know how to grow it or cut it' }).click()
      await page.getByRole('heading', { name: 'What would you like to do?' }).waitFor()
      await page.getByRole('button', { name: 'Pruning and cutting back' }).waitFor()
      await lookAt(page, 'jobs-to-choose-from')
      await page.getByRole('button', { name: 'None of these. Ask a specialist' }).click()
      await page.getByRole('heading', { name: 'Ask a specialist' }).waitFor()
      await page.getByRole('button', { name: 'Hand my sheet over' }).click()
      await page.getByText('Your sheet is with a specialist').waitFor()
      await page.context().close()
    })

    it('are answered where they ask for a job and not for a cure', async () => {
      const page = await (await newVisitor(opened.browser, size)).newPage()
      await page.goto(opened.service.url)
      await askQuestion(page, 'When do I prune my forsythia?')
      await page.locator('.offer').first().getByText('Pruning and cutting back').click()
      await page.getByRole('heading', { name: 'Pruning a shrub that flowers in spring' }).waitFor()
      expect(await page.locator('dt').allInnerTexts()).toContain('Job')
      await page.getByText('Cut it in the few weeks after the flowers fade').waitFor()
      await lookAt(page, 'a-job-answered')
      await page.context().close()
    })

    it('are met by asking for the plant when none was named, and the guesses are a press away', async () => {
      const page = await visit(size, { confidence: 0.2, outOfScope: false, hosts: [] })
      await askQuestion(page, 'black spots on the leaves')
      await page.getByRole('heading', { name: 'Which plant is it about?' }).waitFor()
      await page.getByRole('button', { name: 'I don’t know what plant it is' }).waitFor()
      await lookAt(page, 'no-plant-heard')
      await page.getByRole('button', { name: 'Show what we made of your words' }).click()
      await page.locator('.offer').first().waitFor()
      await page.context().close()
    })

    it('bring the question box back, words and all, when they are about something else', async () => {
      const page = await visit(size, { confidence: 0.1, outOfScope: true })
      await askQuestion(page, 'what time do you open on sundays')
      await page.getByRole('heading', { name: 'We cannot answer this one' }).waitFor()
      expect(await page.evaluate(() => document.querySelector('frondline-panel')?.shadowRoot?.activeElement?.id)).toBe('question-title')
      expect(await page.getByLabel('Your question').inputValue()).toBe('what time do you open on sundays')
      await lookAt(page, 'out-of-scope')
      // Should we have heard it wrong, the plant can still be picked.
      await page.getByRole('button', { name: 'It is about a plant. Let me pick it' }).click()
      await page.getByLabel('Type the plant’s name').waitFor()
      await page.getByRole('button', { name: 'Leave it as it was' }).click()
      await page.unroute(`${opened.service.url}/api/cases`)
      await page.getByLabel('Your question').fill('black spots on my rose leaves and they fall off')
      await page.getByRole('button', { name: 'Ask again' }).click()
      await page.locator('.offer').first().waitFor()
      expect(await page.locator('.words blockquote').allInnerTexts()).toEqual(['black spots on my rose leaves and they fall off'])
      await page.context().close()
    })
  })
}
