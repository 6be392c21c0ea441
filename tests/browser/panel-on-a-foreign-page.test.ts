import { readFile } from 'node:fs/promises'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askQuestion, confirmBestGuess } from './asker.js'
import { newVisitor, openBrowser, STORY_MS, widths } from './browser.js'
import { openForeignPage, type ForeignPage } from './foreign-page.js'
import { startTestService, type TestService } from './running-service.js'

const [phone, desk] = widths
let foreign: ForeignPage
let service: TestService
let browser: Browser
beforeAll(async () => {
  foreign = await openForeignPage()
  service = await startTestService([foreign.origin])
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
  await foreign?.stop()
})

interface Visit { page: Page, console: string[] }

async function visit(body: string, { attributes, width = desk }: { attributes?: string, width?: typeof phone | typeof desk } = {}): Promise<Visit> {
  foreign.hold(body, service.url, attributes)
  const context = await newVisitor(browser, width)
  const page = await context.newPage()
  const console: string[] = []
  page.on('console', message => { if (message.type() === 'warning' || message.type() === 'error') console.push(message.text()) })
  page.on('pageerror', error => console.push(String(error)))
  await page.goto(foreign.origin)
  return { page, console }
}

const PANEL = '<frondline-panel id="one"></frondline-panel>'

describe('the panel on a stranger’s page', { timeout: STORY_MS }, () => {
  it('works under a strict content security policy and keeps its look under hostile CSS', async () => {
    const { page, console } = await visit(PANEL)
    await page.getByLabel('Your question').waitFor()
    const look = await page.evaluate(() => {
      const root = document.querySelector('frondline-panel')?.shadowRoot
      const title = root?.querySelector('.step-title')
      const button = root?.querySelector('button.main')
      if (title == null || button == null) throw new Error('The panel has no title or button.')
      const styleOf = (element: Element) => getComputedStyle(element)
      return {
        title: { size: styleOf(title).fontSize, transform: styleOf(title).textTransform, colour: styleOf(title).color, spacing: styleOf(title).letterSpacing, align: styleOf(title).textAlign },
        button: { display: styleOf(button).display, colour: styleOf(button).backgroundColor, height: button.getBoundingClientRect().height },
      }
    })
    expect(look.title).toEqual({ size: '24px', transform: 'none', colour: 'rgb(29, 38, 35)', spacing: 'normal', align: 'start' })
    expect(look.button.colour).toBe('rgb(13, 89, 96)')
    expect(look.button.height).toBeGreaterThanOrEqual(44)
    await askQuestion(page, 'black spots on my rose leaves')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    expect(console).toEqual([])
    await page.context().close()
  })

  it('keeps several panels of one page apart, also over a reload', async () => {
    const { page } = await visit(`${PANEL}<frondline-panel></frondline-panel>`)
    const [first, second] = [page.locator('frondline-panel').first(), page.locator('frondline-panel').nth(1)]
    await first.getByLabel('Your question').fill('black spots on my rose leaves')
    await first.getByRole('button', { name: 'Start the sheet' }).click()
    await first.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
    expect(await second.getByLabel('Your question').inputValue()).toBe('')
    await page.reload()
    await first.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
    await second.getByLabel('Your question').waitFor()
    expect(await page.context().cookies()).toEqual([])
    await page.context().close()
  })

  it('keeps what was typed when it is moved on the page, and asks nothing while it is out of it', async () => {
    const { page } = await visit(`${PANEL}<aside></aside>`)
    await page.getByLabel('Your question').fill('half a thou')
    await page.evaluate(() => document.querySelector('aside')?.append(document.querySelector('frondline-panel') ?? ''))
    expect(await page.getByLabel('Your question').inputValue()).toBe('half a thou')

    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
    await page.route(`${service.url}/api/**`, route => route.abort())
    await page.locator('.offer').first().click()
    await page.getByText('We cannot reach the helpline just now').waitFor()
    const asked: string[] = []
    await page.unroute(`${service.url}/api/**`)
    page.on('request', request => asked.push(request.url()))
    const panel = await page.evaluateHandle(() => {
      const panel = document.querySelector('frondline-panel')
      panel?.remove()
      return panel
    })
    // Longer than the first repeats would wait.
    await page.waitForTimeout(5_000)
    expect(asked).toEqual([])
    await page.evaluate(panel => document.body.append(panel ?? ''), panel)
    await page.locator('#check-ask').waitFor()
    await page.context().close()
  })

  it('falls back on attributes it cannot use and says each once', async () => {
    const { page, console } = await visit('<frondline-panel service="ftp://x" district="Nowhere!" accent="greenish" language="xx"></frondline-panel>')
    await page.getByLabel('Your question').waitFor()
    expect(console.map(line => /cannot use (\w+)=/.exec(line)?.[1])).toEqual(['service', 'district', 'accent', 'language'])
    await page.evaluate(() => document.querySelector('frondline-panel')?.setAttribute('accent', 'greenish'))
    await page.evaluate(() => document.querySelector('frondline-panel')?.setAttribute('district', 'eastmere'))
    await expect.poll(() => page.getByLabel('Where is the plant?').inputValue()).toBe('eastmere')
    expect(console).toHaveLength(4)
    await page.evaluate(() => document.querySelector('frondline-panel')?.setAttribute('district', 'far-away'))
    await expect.poll(() => console.at(-1)).toContain('district="far-away"')
    await page.context().close()
  })

  it('takes the host’s accent, made readable, and follows it when it changes', async () => {
    const { page } = await visit('<frondline-panel accent="#7a3b12"></frondline-panel>')
    const ground = () => page.getByRole('button', { name: 'Start the sheet' }).evaluate(button => getComputedStyle(button).backgroundColor)
    await page.getByLabel('Your question').waitFor()
    expect(await ground()).toBe('rgb(122, 59, 18)')
    await page.evaluate(() => document.querySelector('frondline-panel')?.setAttribute('accent', '#ffee00'))
    await expect.poll(ground).not.toBe('rgb(122, 59, 18)')
    expect(await ground()).not.toBe('rgb(255, 238, 0)')
    await page.context().close()
  })

  it('observes every attribute its README names', async () => {
    const readme = await readFile(new URL('../../src/web/panel/README.md', import.meta.url), 'utf8')
    const named = [...readme.matchAll(/^\| `(\w+)` \|/gm)].map(row => row[1])
    const { page } = await visit(PANEL)
    await page.getByLabel('Your question').waitFor()
    const observed = await page.evaluate(() => (customElements.get('frondline-panel') as unknown as { observedAttributes: string[] }).observedAttributes)
    expect(observed).toEqual(named)
    await page.context().close()
  })

  it('is dark only on a page that is dark', async () => {
    const paper = (page: Page) => page.locator('.sheet').evaluate(sheet => getComputedStyle(sheet).backgroundColor)
    for (const [attributes, expected] of [['lang="en"', 'rgb(250, 251, 247)'], ['lang="en" class="dark"', 'rgb(24, 32, 30)']] as const) {
      const { page } = await visit(PANEL, { attributes })
      await page.emulateMedia({ colorScheme: 'dark' })
      await page.getByLabel('Your question').waitFor()
      if (attributes.includes('dark')) await page.evaluate(() => { document.documentElement.style.colorScheme = 'light dark' })
      expect(await paper(page)).toBe(expected)
      await page.context().close()
    }
  })

  it('keeps the answer when the network is lost, says so, and sends it when the network is back', async () => {
    const { page } = await visit(PANEL, { width: phone })
    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    await page.context().setOffline(true)
    const answer = await page.locator('.answer-words').first().innerText()
    await page.locator('.answer').first().click()
    await page.getByText(`Your answer “${answer.toLowerCase()}” is kept.`, { exact: false }).waitFor()
    await page.getByRole('button', { name: 'Try again now' }).waitFor()
    await page.context().setOffline(false)
    // The sheet begins with what was said in the question; the answer sent late is the line below.
    await expect.poll(async () => (await page.locator('.line .written').last().innerText()).toLowerCase(), { timeout: 20_000 }).toBe(answer.toLowerCase())
    expect(await page.getByText('We cannot reach the helpline').count()).toBe(0)
    await page.context().close()
  })

  it('writes an answer down once however often its button is pressed', async () => {
    const { page } = await visit(PANEL)
    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    const sent: string[] = []
    page.on('request', request => { if (request.method() === 'POST') sent.push(request.url()) })
    await page.locator('.answer').first().evaluate((button: HTMLButtonElement) => { button.click(); button.click(); button.click() })
    await page.locator('.line .written').first().waitFor()
    expect(sent.filter(url => url.endsWith('/answers'))).toHaveLength(1)
    await page.context().close()
  })

  it('shows the sheet as it stands, kindly, when it was changed in another window', async () => {
    const { page } = await visit(PANEL)
    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await confirmBestGuess(page)
    await page.locator('#check-ask').waitFor()
    const link = await page.evaluate(() => Object.entries(sessionStorage).find(([key]) => key.startsWith('frondline'))?.[1])
    const current = await (await page.request.get(`${service.url}/api/cases/${link}`)).json() as { revision: number, step: { check: { id: string } } }
    await page.request.post(`${service.url}/api/cases/${link}/answers`, { data: { revision: current.revision, check: current.step.check.id, answer: "can't look now" } })
    await page.locator('.answer').first().click()
    await page.getByText('This sheet was changed elsewhere').waitFor()
    expect(await page.locator('.line .written').last().innerText()).toBe("can't look now")
    await page.context().close()
  })

  it('makes no call of a question that a signed-in volunteer tries on the panel', async () => {
    const account = service.passwordOf('volunteer')
    const context = await newVisitor(browser, desk)
    const page = await context.newPage()
    await page.request.post(`${service.url}/api/sign-in`, { data: account, headers: { origin: service.url } })
    await page.goto(service.url)
    await askQuestion(page, 'black spots on my rose leaves and they fall off')
    await page.getByRole('heading', { name: 'Did we hear you right?' }).waitFor()
    const calls = await (await page.request.get(`${service.url}/api/calls`)).json() as { calls: unknown[] }
    expect(calls.calls).toEqual([])
    await context.close()
  })
})
