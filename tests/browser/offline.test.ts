import { describe, expect, it } from 'vitest'
import { askQuestion, confirmBestGuess } from './asker.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

for (const size of widths) {
  describe(`an asker in a garden without a network, on a ${size.name}`, { timeout: STORY_MS }, () => {
    it('is told, goes on, and finds every answer on the sheet when the network is back', async () => {
      const context = await newVisitor(opened.browser, size)
      const page = await context.newPage()
      await page.goto(opened.service.url)
      await askQuestion(page, 'black spots on my rose leaves and they fall off')
      await confirmBestGuess(page)
      await page.locator('#check-ask').waitFor()
      const first = await page.locator('#check-ask').innerText()
      await page.getByRole('button', { name: 'Not sure' }).click()
      await expect.poll(() => page.locator('#check-ask').innerText()).not.toBe(first)
      const second = await page.locator('#check-ask').innerText()

      await context.setOffline(true)
      await page.getByText('No network just now.').waitFor()
      await page.getByText('You can go on.').waitFor()
      await lookAt(page, 'no-network')
      const answer = page.locator('.answers:not(.calm) .answer').first()
      const said = await answer.locator('.answer-words').innerText()
      await answer.click()
      await page.getByText(`Your answer “${said}” is kept.`).waitFor()
      // An earlier line is changed and words are added, still without a network.
      await page.getByRole('button', { name: `Change your answer to: ${first}` }).click()
      await page.getByRole('heading', { name: first }).waitFor()
      await page.getByRole('button', { name: 'Can’t look now' }).click()
      await page.getByText('2 things you wrote are kept.').waitFor()
      await page.getByText('I noticed something else').click()
      await page.getByLabel('What did you notice?').fill('It began in May.')
      await page.getByRole('button', { name: 'Add to the sheet' }).click()
      await page.getByText('3 things you wrote are kept.').waitFor()
      await lookAt(page, 'no-network-kept')

      await context.setOffline(false)
      await page.locator('.words blockquote', { hasText: 'It began in May.' }).waitFor()
      await page.locator('.no-network').waitFor({ state: 'detached' })
      expect(await page.locator('.trouble').count()).toBe(0)
      const written = async (ask: string) => page.locator('.line', { hasText: ask }).locator('.written').innerText()
      expect(await written(first)).toBe('can\'t look now')
      expect((await written(second)).toLowerCase()).toBe(said.toLowerCase())
      expect(await page.getByLabel('What did you notice?').inputValue()).toBe('')
      await context.close()
    })
  })
}
