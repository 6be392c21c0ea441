import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { openedForTests } from './opened.js'
import type { CaseView } from '../../shared/index.js'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark } from './looking.js'

const opened = openedForTests()

describe('a specialist at the bench', { timeout: 3 * STORY_MS }, () => {
  it('takes, asks back, sees the answer come in and move the differential, settles after reading once more, and changes the answer', async () => {
    const asker = await handOver('brown wet patches on my tomato leaves, my name is Fern Hollis', 'tomato', { 'plant-part': 'leaves', 'leaf-change': 'spots or blotches' })
    await sendPhoto(asker)
    await sendPhoto(asker)
    const page = await atTheBench()

    await page.keyboard.press('d')
    await lookAtBoth(page, 'bench-pile')
    await page.keyboard.press('Enter')
    // The list shows the words too: only the open sheet has the ticket's number for its title, and its keys.
    await page.getByRole('heading', { name: /^Ticket / }).waitFor()
    await page.getByText('brown wet patches').first().waitFor()
    await page.keyboard.press('t')
    await page.getByText('With sedge').waitFor()
    await lookAtBoth(page, 'bench-taken')

    // Two photos side by side, by keys alone.
    await page.getByRole('button', { name: /^Open photo 1/ }).press('Enter')
    await page.locator('.photo-table[open]').waitFor()
    await page.keyboard.press('c')
    await page.keyboard.press('+')
    await page.getByText('150 %').waitFor()
    expect(await page.locator('.table-frame').count()).toBe(2)
    await lookAtBoth(page, 'bench-photos')
    await page.keyboard.press('Escape')
    await page.locator('.photo-table').waitFor({ state: 'detached' })

    await page.getByRole('heading', { name: /^Ticket / }).focus()
    await page.keyboard.press('q')
    await page.locator('.check-pick', { hasText: 'underside' }).first().waitFor()
    await page.keyboard.type('underside')
    await page.keyboard.press('Enter')
    await page.getByText('Picked', { exact: true }).waitFor()
    await page.getByLabel('Ask for photos').check()
    await lookAtBoth(page, 'bench-ask-back')
    await page.keyboard.press('Control+Enter')
    await page.getByText('Asked back, with sedge').waitFor()

    // The asker's answer lands on the sheet by itself, and leaves the focus where a note is being written.
    await page.keyboard.press('n')
    await page.getByLabel('Only colleagues see it').waitFor()
    await page.keyboard.type('Half a not')
    await answer(asker.link, 'leaf-underside', 'white or grey fuzz')
    await page.locator('.moved').first().waitFor({ timeout: 40_000 })
    await page.keyboard.type('e')
    expect(await page.getByLabel('Only colleagues see it').inputValue()).toBe('Half a note')
    // Left and opened again, it is still there.
    await page.keyboard.press('Escape')
    await onTheTitle(page)
    await page.keyboard.press('k')
    await page.locator('#other-ticket').waitFor()
    await page.keyboard.press('Escape')
    await onTheTitle(page)
    await page.keyboard.press('n')
    await expect.poll(() => page.getByLabel('Only colleagues see it').inputValue()).toBe('Half a note')
    expect(await page.locator('.line .written', { hasText: 'white or grey fuzz' }).count()).toBe(1)
    await lookAtBoth(page, 'bench-moved')
    await page.keyboard.press('Control+Enter')
    await page.getByText('For colleagues only').waitFor()

    await page.keyboard.press('s')
    await page.keyboard.type('LV-2026-7')
    await page.keyboard.press('Tab')
    await page.keyboard.type('Three leaves in dry paper')
    await page.keyboard.press('Control+Enter')
    await page.getByText('At the laboratory, with sedge').waitFor()
    await page.keyboard.press('r')
    await page.keyboard.type('A water mould.')
    await page.keyboard.press('Control+Enter')
    await page.getByText('A water mould.').waitFor()

    await page.keyboard.press('a')
    await page.locator('.problem-line', { hasText: 'Tomato late blight' }).waitFor()
    await page.keyboard.type('late blight')
    await page.keyboard.press('Enter')
    await expect.poll(() => page.getByLabel('What the asker will read').inputValue()).toContain('Do not carry any part of the plant')
    expect(await page.getByLabel('What the asker will read').inputValue()).not.toMatch(/specialist/i)
    // Another problem takes its own advice along; a text changed by hand is asked about and kept.
    const text = page.getByLabel('What the asker will read')
    const blight = await text.inputValue()
    await page.getByLabel('Type to narrow').fill('septoria')
    await page.getByLabel('Type to narrow').press('Enter')
    await expect.poll(() => text.inputValue()).not.toBe(blight)
    await text.fill('Written by hand.')
    await page.getByLabel('Type to narrow').fill('late blight')
    await page.getByLabel('Type to narrow').press('Enter')
    await page.locator('.at-odds').waitFor()
    await page.keyboard.press('Control+Enter')
    await page.getByText('Please say first whether the text still fits.').waitFor()
    await lookAtBoth(page, 'bench-at-odds')
    await lookInTheDark(page, 'bench-at-odds')
    await page.getByRole('button', { name: 'Put the guide’s advice in instead' }).click()
    expect(await text.inputValue()).toBe(blight)
    await page.getByRole('button', { name: 'Bring back the text from before' }).click()
    expect(await text.inputValue()).toBe('Written by hand.')
    await page.getByRole('button', { name: 'Put the guide’s advice in', exact: true }).click()
    await text.focus()
    await lookAtBoth(page, 'bench-writing')
    await page.keyboard.press('Control+Enter')
    await page.getByRole('heading', { name: 'Read it once more' }).waitFor()
    await page.getByLabel(/^Keep this case/).check()
    // No name that the asker gave goes into the casebook.
    expect(await page.getByLabel('The words as they will stand there').inputValue()).not.toMatch(/Fern|Hollis/)
    await lookAtBoth(page, 'bench-reading-once-more')
    await page.keyboard.press('Control+Enter')
    await page.getByText('Settled by sedge').waitFor()
    await page.getByText('Kept for the casebook by sedge').waitFor()

    await page.keyboard.press('a')
    await page.getByRole('heading', { name: 'Change the answer' }).waitFor()
    await page.keyboard.type('A word more. ')
    await page.keyboard.press('Control+Enter')
    await page.getByRole('heading', { name: 'Read it once more' }).waitFor()
    await page.keyboard.press('Control+Enter')
    await page.getByText('An earlier answer', { exact: true }).waitFor()
    expect(await page.locator('.replies > .as-read .letter').innerText()).toMatch(/^A word more\./)
    await lookAtBoth(page, 'bench-amended')
    await page.context().close()
  })

  it('gives back, hands on, links, merges and finds tickets', async () => {
    const first = await handOver('my lettuce has holes since Sunday', 'lettuce', {}, { email: 'reed@larkmoor.example' })
    await handOver('it is me again about the lettuce', null, {}, { email: 'reed@larkmoor.example' })
    const page = await atTheBench()
    await page.getByRole('link', { name: 'it is me again about the lettuce' }).press('Enter')
    // The plant was never settled: the words' best guess is shown.
    await page.locator('.guesses', { hasText: 'Lettuce' }).waitFor()
    await page.getByText('Left with the same address or telephone').first().waitFor()
    await page.keyboard.press('t')
    await page.getByText('With sedge').waitFor()
    await page.keyboard.press('b')
    await page.getByText(/^Waiting since/).waitFor()
    await page.keyboard.press('t')
    await page.getByText('With sedge').waitFor()
    await page.keyboard.press('h')
    await page.locator('option', { hasText: 'alder' }).waitFor({ state: 'attached' })
    await page.getByLabel('Who goes on with it').selectOption('alder')
    await lookAtBoth(page, 'bench-hand-on')
    await page.keyboard.press('Escape')
    await page.keyboard.press('k')
    await page.locator('#other-ticket').waitFor()
    await lookAtBoth(page, 'bench-merge')
    await page.keyboard.press('Control+Enter')
    await page.getByText(/^Merged into ticket/).waitFor()
    await page.keyboard.press('u')
    await page.getByText('With sedge').or(page.getByText(/^Waiting since/)).first().waitFor()
    expect(await page.getByText(/^Merged into ticket/).count()).toBe(0)

    await page.keyboard.press('l')
    await page.locator('.ledger-row').first().waitFor()
    await page.keyboard.press('f')
    await page.getByLabel('Words of the sheet').waitFor()
    await page.keyboard.type('since Sunday')
    await lookAtBoth(page, 'bench-find')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: /^Found/ }).waitFor()
    await expect.poll(() => page.locator('.ledger-row').count()).toBe(1)
    expect(await page.locator('.ledger-row').innerText()).toContain(first.words[0])

    // Contact details are asked for, not lying about.
    await page.getByRole('link', { name: 'my lettuce has holes since Sunday' }).press('Enter')
    await page.getByRole('button', { name: 'Show the contact details' }).waitFor()
    expect(await page.getByText('reed@larkmoor.example').count()).toBe(0)
    await page.getByRole('button', { name: 'Show the contact details' }).press('Enter')
    await page.getByText('reed@larkmoor.example').waitFor()
    await page.context().close()
  })
})

async function atTheBench(): Promise<Page> {
  const context = await newVisitor(opened.browser, widths[1])
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await page.request.post(`${opened.service.url}/api/sign-in`, { data: opened.service.passwordOf('specialist'), headers: { origin: opened.service.url } })
  await page.goto(`${opened.service.url}/bench`)
  await page.locator('.ledger-row').first().waitFor()
  return page
}

/** Waits until an open form is left: the focus is then on the ticket's title, where keys act. */
async function onTheTitle(page: Page): Promise<void> {
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('ticket-title')
}

async function lookAtBoth(page: Page, name: string): Promise<void> {
  for (const { width, height } of widths) {
    await page.setViewportSize({ width, height })
    await lookAt(page, name)
  }
}

async function send(path: string, body: object): Promise<CaseView> {
  const reply = await fetch(opened.service.url + path, { method: 'POST', headers: { 'content-type': 'application/json', origin: opened.service.url }, body: JSON.stringify(body) })
  if (!reply.ok) throw new Error(`${path}: ${reply.status} ${await reply.text()}`)
  return await reply.json() as CaseView
}

async function handOver(words: string, host: string | null, answers: Readonly<Record<string, string>>, contact?: { readonly email: string }): Promise<CaseView> {
  let view = await send('/api/cases', { words, district: 'holt-fen' })
  if (host !== null) view = await send(`/api/cases/${view.link}/place`, { revision: view.revision, host, node: null })
  for (const [check, said] of Object.entries(answers)) view = await send(`/api/cases/${view.link}/answers`, { revision: view.revision, check, answer: said })
  return send(`/api/cases/${view.link}/hand-over`, { revision: view.revision, ...(contact === undefined ? {} : { contact }) })
}

async function answer(link: string, check: string, said: string): Promise<void> {
  const view = await (await fetch(`${opened.service.url}/api/cases/${link}`)).json() as CaseView
  await send(`/api/cases/${link}/answers`, { revision: view.revision, check, answer: said })
}

let sent = 0
async function sendPhoto({ link }: CaseView): Promise<void> {
  const photo = await sharp({ create: { width: 900, height: 600, channels: 3, background: { r: 70, g: 110 + 40 * (sent % 3), b: 60 } } }).jpeg().toBuffer()
  const reply = await fetch(`${opened.service.url}/api/cases/${link}/photos/bench-story-photo-${++sent}`, { method: 'PUT', headers: { 'content-type': 'image/jpeg', origin: opened.service.url }, body: new Uint8Array(photo) })
  if (!reply.ok) throw new Error(`The photo was not taken: ${reply.status} ${await reply.text()}`)
}
