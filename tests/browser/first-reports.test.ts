import { describe, expect, it } from 'vitest'
import type { CaseView } from '../../shared/index.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

describe('the first report of a watch problem in a district this year', { timeout: STORY_MS }, () => {
  it('stands above the tickets on the bench until a specialist puts it aside', async () => {
    const page = await (await newVisitor(opened.browser, widths[1])).newPage()
    page.setDefaultTimeout(30_000)
    const headers = { origin: opened.service.url }
    const post = async (path: string, data: object) => {
      const reply = await page.request.post(opened.service.url + path, { data, headers })
      expect(reply.status(), await reply.text()).toBeLessThan(300)
      return reply
    }
    const asked = await (await post('/api/cases', { words: 'something is wrong with my potatoes', district: 'holt-fen' })).json() as CaseView
    const placed = await (await post(`/api/cases/${asked.link}/place`, { revision: asked.revision, host: 'potato', node: null })).json() as CaseView
    await post(`/api/cases/${asked.link}/hand-over`, { revision: placed.revision })
    await post('/api/sign-in', opened.service.passwordOf('specialist'))
    const { tickets: [waiting] } = await (await page.request.get(`${opened.service.url}/api/tickets`)).json() as { tickets: { ticket: string }[] }
    await post(`/api/tickets/${waiting?.ticket}/settle`, { text: 'It is late blight. Please report it.', outcome: { kind: 'problem', problem: 'potato-late-blight' } })

    await page.goto(`${opened.service.url}/bench`)
    await page.getByRole('heading', { name: 'First report of the year' }).waitFor()
    await page.getByText('in Holt Fen').waitFor()
    for (const { width, height } of widths) {
      await page.setViewportSize({ width, height })
      await lookAt(page, 'first-report')
    }
    await page.getByRole('button', { name: 'Put aside' }).click()
    await expect.poll(() => page.getByRole('heading', { name: 'First report of the year' }).count()).toBe(0)
    await page.reload()
    await page.getByRole('heading', { name: /^Waiting/ }).waitFor()
    expect(await page.getByRole('heading', { name: 'First report of the year' }).count()).toBe(0)
    await page.context().close()
  })
})
