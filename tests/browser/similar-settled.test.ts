import type { Page } from 'playwright-core'
import { describe, it } from 'vitest'
import { openedForTests } from './opened.js'
import type { CaseView } from '../../shared/index.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'

const opened = openedForTests()

const FUZZ = { 'leaf-underside': 'white or grey fuzz', 'leaf-spots': 'pale or yellow patches with straight edges' }

describe('settled cases like the one at hand', { timeout: STORY_MS }, () => {
  it('stand on the specialist’s sheet and on the volunteer’s, and only the specialist can open them', async () => {
    const earlier = await lettuce(FUZZ)
    await send(`/api/cases/${earlier.link}/hand-over`, { revision: earlier.revision })
    const bench = await signedIn('specialist')
    const { tickets: [waiting] } = await (await bench.request.get(`${opened.service.url}/api/tickets`)).json() as { tickets: { ticket: string }[] }
    await bench.request.post(`${opened.service.url}/api/tickets/${waiting?.ticket}/settle`, {
      data: { text: 'Pick the spotted leaves off.', outcome: { kind: 'problem', problem: 'lettuce-downy-mildew' } }, headers: { origin: opened.service.url },
    })
    const later = await lettuce({ ...FUZZ, 'leaf-spots': 'none of these' })
    await send(`/api/cases/${later.link}/hand-over`, { revision: later.revision })

    await bench.goto(`${opened.service.url}/bench`)
    await bench.locator('.ledger-row a').first().press('Enter')
    await bench.getByRole('heading', { name: 'Settled this season in Holt Fen: Lettuce' }).waitFor()
    await bench.getByText('1 answer the same, 1 different').waitFor()
    await lookAtBoth(bench, 'bench-similar')
    await bench.locator('.similar').getByRole('link', { name: `Ticket ${waiting?.ticket}` }).press('Enter')
    await bench.getByText('Settled by sedge').waitFor()
    await bench.context().close()

    const sheet = await signedIn('volunteer')
    await sheet.goto(`${opened.service.url}/sheet`)
    await sheet.getByRole('heading', { name: 'A new call' }).waitFor()
    await sheet.keyboard.type('the outer leaves on my lettuce have yellow squares and white fuzz underneath')
    await sheet.getByText('So far this sounds like').waitFor()
    await sheet.keyboard.press('Enter')
    await sheet.getByText('What is the call about?').waitFor()
    await sheet.keyboard.press('1')
    await sheet.getByRole('heading', { name: 'Settled this season: Lettuce' }).waitFor()
    await sheet.locator('.similar', { hasText: 'Lettuce downy mildew' }).waitFor()
    if (await sheet.locator('.similar a').count() > 0) throw new Error('A volunteer is shown a ticket that they may not open.')
    await lookAtBoth(sheet, 'call-similar')
    await sheet.context().close()
  })
})

async function signedIn(role: 'specialist' | 'volunteer'): Promise<Page> {
  const page = await (await newVisitor(opened.browser, widths[1])).newPage()
  page.setDefaultTimeout(30_000)
  await page.request.post(`${opened.service.url}/api/sign-in`, { data: opened.service.passwordOf(role), headers: { origin: opened.service.url } })
  return page
}

async function lettuce(answers: Readonly<Record<string, string>>): Promise<CaseView> {
  let view = await send('/api/cases', { words: 'something is wrong with my lettuce', district: 'holt-fen' })
  view = await send(`/api/cases/${view.link}/place`, { revision: view.revision, host: 'lettuce', node: null })
  for (const [check, answer] of Object.entries(answers)) view = await send(`/api/cases/${view.link}/answers`, { revision: view.revision, check, answer })
  return view
}

async function send(path: string, body: object): Promise<CaseView> {
  const reply = await fetch(opened.service.url + path, { method: 'POST', headers: { 'content-type': 'application/json', origin: opened.service.url }, body: JSON.stringify(body) })
  if (!reply.ok) throw new Error(`${path}: ${reply.status} ${await reply.text()}`)
  return await reply.json() as CaseView
}

async function lookAtBoth(page: Page, name: string): Promise<void> {
  for (const { width, height } of widths) {
    await page.setViewportSize({ width, height })
    await lookAt(page, name)
  }
}
