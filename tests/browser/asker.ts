import type { Page } from 'playwright-core'

/** Writes a question on the empty sheet and confirms the best guess. */
export async function askQuestion(page: Page, words: string): Promise<void> {
  await page.getByLabel('Your question').fill(words)
  await page.getByRole('button', { name: 'Start the sheet' }).click()
}

/** Confirms the first offered plant and complaint. */
export async function confirmBestGuess(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
  await page.locator('.offer').first().click()
}

/**
 * Answers check after check until none is open. Where a listed answer is among the check's own it is taken, else
 * "not sure": the story then does not hang on the order in which the tree asks. Returns the checks asked.
 */
export async function answerChecks(page: Page, seen: readonly string[], most = 10): Promise<string[]> {
  const asked: string[] = []
  while (asked.length < most) {
    const heading = page.locator('#check-ask')
    await page.locator('#check-ask, .advice, .hand-over').first().waitFor()
    if (await heading.count() === 0) return asked
    const ask = await heading.innerText()
    asked.push(ask)
    const labels = await page.locator('.answers:not(.calm) .answer-words').allInnerTexts()
    const place = labels.findIndex(label => seen.some(answer => answer.toLowerCase() === label.toLowerCase()))
    await (place < 0 ? page.getByRole('button', { name: 'Not sure' }) : page.locator('.answers:not(.calm) .answer').nth(place)).click()
    await page.waitForFunction(before => {
      const root = document.querySelector('frondline-panel')?.shadowRoot
      return root?.querySelector('#check-ask')?.textContent !== before
    }, ask)
  }
  return asked
}
