import type { Page } from 'playwright-core'

/** Writes a question on the empty sheet and confirms the best guess. */
export async function askQuestion(page: Page, words: string): Promise<void> {
  await page.getByLabel('Your question').fill(words)
  await page.getByRole('button', { name: 'Start the sheet' }).click()
}

/** Confirms the first offered plant and complaint. */
export async function confirmBestGuess(page: Page): Promise<void> {
  await page.locator('.offer').first().click()
}

/** Picks a plant by name and starts at the top of its tree, whatever was made of the words. */
export async function pickPlant(page: Page, plant: string): Promise<void> {
  const other = page.getByRole('button', { name: 'Something else', exact: true })
  const field = page.getByLabel('Type the plant’s name')
  await other.or(field).first().waitFor()
  if (await other.count() > 0) await other.click()
  await field.fill(plant)
  await page.getByRole('button', { name: plant, exact: true }).click()
  await page.getByRole('button', { name: 'None of these, or I cannot say' }).click()
}

/**
 * Answers check after check until none is open. Where a listed answer is among the check's own it is taken, else
 * "not sure": the story then does not hang on the order in which the tree asks. Stops also where `until` is shown.
 * Returns the checks asked.
 */
export async function answerChecks(page: Page, seen: readonly string[], { most = 14, until = '.advice, .hand-over' } = {}): Promise<string[]> {
  const asked: string[] = []
  while (asked.length < most) {
    const heading = page.locator('#check-ask')
    await page.locator('#check-ask, .advice, .hand-over').first().waitFor()
    if (await heading.count() === 0 || await page.locator(until).count() > 0) return asked
    const ask = await heading.innerText()
    const state = `${ask}/${await page.locator('.second-look').count() > 0 ? await page.locator('.second-look').textContent() : undefined}`
    asked.push(ask)
    const labels = await page.locator('.answers:not(.calm) .answer-words').allInnerTexts()
    const place = labels.findIndex(label => seen.some(answer => answer.toLowerCase() === label.toLowerCase()))
    await (place < 0 ? page.getByRole('button', { name: 'Not sure' }) : page.locator('.answers:not(.calm) .answer').nth(place)).click()
    // A second look asks the same check again: then it is the note that is new.
    await page.waitForFunction(before => {
      const root = document.querySelector('frondline-panel')?.shadowRoot
      return `${root?.querySelector('#check-ask')?.textContent}/${root?.querySelector('.second-look')?.textContent}` !== before
    }, state)
  }
  return asked
}
