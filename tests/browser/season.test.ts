import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SeasonView } from '../../shared/index.js'
import { addDemonstration } from '../../src/desk/index.js'
import { openStore } from '../../src/store/index.js'
import { wholeGuide } from '../whole-guide.js'
import { newVisitor, openBrowser, STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark, lookOnPaper } from './looking.js'
import { startTestService, type TestService } from './running-service.js'

let home: string
let service: TestService
let browser: Browser
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-season-'))
  service = await startTestService([], {}, undefined, { FRONDLINE_HOME: home })
  // Beside the running service, as `frondline season demo add` does it.
  const store = await openStore({ home })
  const guide = await wholeGuide()
  await addDemonstration({ db: store.db, now: () => new Date(), knowledge: () => ({ guide }) })
  await store.close()
  browser = await openBrowser()
}, 3 * STORY_MS)
afterAll(async () => {
  await browser?.close()
  await service?.stop()
  await rm(home, { recursive: true, force: true })
})

for (const { name, width, height } of widths) {
  describe(`the season, on a ${name}`, { timeout: 2 * STORY_MS }, () => {
    const signedIn = async (role: 'volunteer' | 'specialist'): Promise<Page> => {
      const context = await newVisitor(browser, { width, height })
      const page = await context.newPage()
      await page.request.post(`${service.url}/api/sign-in`, { data: service.passwordOf(role), headers: { origin: service.url } })
      return page
    }
    /** Reads the page as one whose browser runs no script. */
    const readPlainly = async (path: string): Promise<{ status: number, text: string, html: string }> => {
      const context = await browser.newContext({ viewport: { width, height }, javaScriptEnabled: false })
      const page = await context.newPage()
      const reply = await page.goto(service.url + path)
      const read = { status: reply?.status() ?? 0, text: await page.locator('main').innerText(), html: await page.content() }
      await context.close()
      return read
    }

    it('is read by a specialist, who says what is present, and publishes and takes back the note that everyone reads', async () => {
      const page = await signedIn('specialist')
      await page.goto(`${service.url}/season`)
      await page.getByText('These seasons are invented, for the demonstration.').waitFor()
      await page.locator('.plate svg').first().waitFor()
      const season = await (await page.request.get(`${service.url}/api/season`)).json() as SeasonView
      expect(await page.locator('.plate').count()).toBe(Math.min(9, season.problems.length))
      await lookAt(page, 'season')

      // The first drawing in numbers: what the service counts, week by week.
      const plate = page.locator('.plate').first()
      await plate.getByText('The numbers').click()
      expect(await plate.locator('tbody th').allInnerTexts()).toEqual(season.problems[0]?.weeks.map(({ week }) => week))
      expect(await plate.locator('tbody tr td:nth-child(4)').allInnerTexts()).toEqual(season.problems[0]?.weeks.map(({ cases }) => String(cases)))
      const [file] = await Promise.all([page.waitForEvent('download'), plate.getByRole('button', { name: 'Save as CSV' }).click()])
      expect(file.suggestedFilename()).toBe(`${season.problems[0]?.problem}-by-week-all.csv`)
      await plate.getByText('The numbers').click()

      await page.locator('.ledger-head select').selectOption('Holt Fen')
      await page.getByRole('heading', { name: 'Weather in Holt Fen' }).waitFor()
      await page.getByText('Holt Fen school garden (invented)').first().waitFor()
      await expect.poll(() => page.locator('section[aria-labelledby="weather-title"] .plate svg').count()).toBeGreaterThan(0)
      await lookAt(page, 'season-district')
      await lookInTheDark(page, 'season-district')

      const place = page.locator('.presence tbody tr').first().getByRole('button').last()
      await place.click()
      await page.getByRole('button', { name: 'Write it down' }).click()
      await page.getByText('Please say why').waitFor()
      await page.getByRole('radio', { name: /widespread/ }).check()
      await page.locator('#presence-why').fill(`Seen in six gardens, told on a ${name}.`)
      await lookAt(page, 'season-presence')
      await page.getByRole('button', { name: 'Write it down' }).click()
      await page.locator('.presence-words').getByText(`Seen in six gardens, told on a ${name}.`).waitFor()
      expect(await place.innerText()).toContain('widespread')
      // On paper too the table says what is where: its words are buttons, which paper leaves out elsewhere.
      await page.emulateMedia({ media: 'print' })
      expect(await place.isVisible()).toBe(true)
      await page.emulateMedia({ media: 'screen' })

      const lead = `Written on a ${name}: look at your plants after the rain.`
      await page.getByLabel('To begin with').fill(lead)
      expect((await readPlainly('/seeing')).text).not.toContain(lead)
      await page.getByRole('button', { name: 'Approve: let everyone read it' }).click()
      const link = page.getByRole('link', { name: 'see it as everyone does' })
      await link.waitFor()
      await lookAt(page, 'season-note')

      const { status, text, html } = await readPlainly('/seeing')
      expect(status).toBe(200)
      expect(text).toContain(lead)
      expect(html).not.toContain('<script')
      const counts = [...text.matchAll(/^Reports: (.*)\.$/gm)].flatMap(([, line = '']) => line.match(/\d+/g) ?? []).map(Number)
      expect(counts.filter((count) => count < 5)).toEqual([])
      const reading = await (await newVisitor(browser, { width, height })).newPage()
      await reading.goto(`${service.url}/seeing`)
      await lookAt(reading, 'seeing')
      await lookInTheDark(reading, 'seeing')
      await lookOnPaper(reading, 'seeing')
      await reading.goto(`${service.url}/seeing/inside`)
      await lookAt(reading, 'seeing-inside')
      await reading.context().close()

      const volunteer = await signedIn('volunteer')
      await volunteer.goto(`${service.url}/sheet`)
      await volunteer.getByRole('button', { name: /^What we are seeing this week/ }).first().waitFor()
      expect(await volunteer.getByText(lead).isVisible()).toBe(false)
      await volunteer.keyboard.press('Escape')
      await volunteer.keyboard.press('s')
      await volunteer.getByText(lead).waitFor()
      await lookAt(volunteer, 'call-seen-lately')
      await volunteer.keyboard.press('s')
      await volunteer.getByText(lead).waitFor({ state: 'hidden' })
      await volunteer.context().close()

      await page.getByRole('button', { name: 'Take it back' }).click()
      await page.getByText('Nobody else can read this week’s note yet.').waitFor()
      expect((await readPlainly('/seeing')).text).not.toContain(lead)
      expect((await readPlainly(`/seeing?week=${season.until}`)).status).toBe(404)
      await page.context().close()
    })
  })
}
