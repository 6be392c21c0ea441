import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { answerChecks, askQuestion, confirmBestGuess } from './asker.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()
const [phone] = widths
const BEES = ['smooth notches from the edge', 'neat half circles or ovals, as if punched', 'no spots', 'leaves', 'holes or chewed edges']

describe('who uses the sheet in a way of their own', { timeout: STORY_MS }, () => {
  const visit = async (path = '/'): Promise<Page> => {
    const page = await (await newVisitor(opened.browser, phone)).newPage()
    await page.goto(path.startsWith('http') ? path : opened.service.url + path)
    return page
  }

  it('finds nothing moving where less motion is asked for', async () => {
    const page = await visit()
    await askQuestion(page, 'bits are missing from my rose leaves')
    await confirmBestGuess(page)
    await answerChecks(page, BEES)
    const moving = () => page.evaluate(() => document.getAnimations().length + (document.querySelector('frondline-panel')?.shadowRoot?.getAnimations().length ?? 0))
    await page.getByRole('button', { name: /^Change your answer to/ }).first().click()
    await page.getByRole('button', { name: 'Keep my answer' }).click()
    expect(await moving()).toBe(0)
    await page.context().close()
  })

  it('goes by Tab through a check from its answers to the ways past it and on, in the order in which it is read', async () => {
    const page = await visit()
    await askQuestion(page, 'bits are missing from my rose leaves')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    // The heading has the focus; what comes next is the first answer.
    const answers = await page.locator('.check .answer-words').allInnerTexts()
    const focused = () => page.evaluate(() => (document.querySelector('frondline-panel')?.shadowRoot?.activeElement as HTMLElement | null)?.innerText ?? '')
    const passed: string[] = []
    for (const _ of answers) {
      await page.keyboard.press('Tab')
      passed.push(await focused())
    }
    expect(passed).toEqual(answers)
    await page.keyboard.press('Tab')
    expect(await focused()).toBe('I noticed something else')
    await page.context().close()
  })

  it('has every control at least 24 pixels high and wide, or with that much room round it', async () => {
    const page = await visit()
    const small = () => page.evaluate(() => {
      // WCAG 2.2, 2.5.8: 24 by 24 CSS pixels; links within a sentence are left out by the same criterion.
      const roots = [document.querySelector('frondline-panel')?.shadowRoot].flatMap(root => root ?? [])
      return roots.flatMap(root => [...root.querySelectorAll<HTMLElement>('button, a, input, select, textarea, summary')])
        .filter(control => control.checkVisibility() && control.closest('p, li, cite')?.matches('p:has(> a:not(:only-child))') !== true)
        .map(control => ({ name: control.innerText || control.id, box: control.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 24 || box.height < 24).map(({ name, box }) => `${name} ${box.width}x${box.height}`)
    })
    await page.getByLabel('Your question').waitFor()
    expect(await small()).toEqual([])
    await askQuestion(page, 'bits are missing from my rose leaves')
    await page.locator('.offer').first().waitFor()
    expect(await small()).toEqual([])
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    expect(await small()).toEqual([])
    await answerChecks(page, BEES)
    expect(await small()).toEqual([])
    await page.context().close()
  })

  it('sees the sheet in the system’s own colours, and prints the advice on one page', async () => {
    const page = await visit()
    await askQuestion(page, 'bits are missing from my rose leaves')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    await page.emulateMedia({ forcedColors: 'active' })
    await lookAt(page, 'first-check-forced-colors')
    // Where the browser paints over all grounds, edges must still tell an answer from what is around it.
    expect(await page.locator('.answer').first().evaluate(button => getComputedStyle(button).borderTopStyle)).toBe('solid')
    await page.emulateMedia({ forcedColors: 'none' })
    await answerChecks(page, BEES)
    await page.locator('.advice').waitFor()
    const link = await page.getByRole('link', { name: 'Open as a page to print' }).getAttribute('href')
    const paper = await visit(String(link))
    await paper.locator('.advice').waitFor()
    const pdf = (await paper.pdf({ format: 'A4', preferCSSPageSize: false })).toString('latin1')
    expect(pdf.match(/\/Type\s*\/Page(?!s)/g)).toHaveLength(1)
    for (const each of [page, paper]) await each.context().close()
  })
})
