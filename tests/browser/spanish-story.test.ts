import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { type Guide, guideIn, type WorkedCase } from '../../src/guide/index.js'
import { openMailServer } from '../mail/mail-server.js'
import { wholeGuide } from '../whole-guide.js'
import { STORY_MS, widths } from './browser.js'
import { lookAt, lookInTheDark, lookOnPaper } from './looking.js'
import { openedForTests } from './opened.js'
import { startTestService } from './running-service.js'

const opened = openedForTests()
const [phone] = widths

/** A case of the casebook that ends with blossom end rot of the tomato. */
const TOMATO = 'tomato-001'

describe('an asker who speaks Spanish, on a phone', { timeout: STORY_MS }, () => {
  const visit = async (path: string, locale = 'en-GB', service = opened.service.url): Promise<Page> => {
    const context = await opened.browser.newContext({ viewport: { width: phone.width, height: phone.height }, reducedMotion: 'reduce', locale })
    context.setDefaultTimeout(15_000)
    const page = await context.newPage()
    await page.goto(service + path)
    return page
  }

  it('chooses Spanish on an English page, asks, is answered and reads the advice, all of it in Spanish or marked as English', async () => {
    const guide = await wholeGuide()
    const page = await visit('/')
    await page.getByRole('button', { name: 'Español' }).click()
    await page.getByRole('heading', { name: '¿Qué le pasa a su planta?' }).waitFor()
    await lookAt(page, 'spanish-empty-sheet')
    expect(await languageOf(page, '.frondline')).toBe('es')
    // Quiet: nothing was sent, and the page around stays as it is.
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en')

    await page.getByRole('button', { name: 'Empezar la ficha' }).click()
    await page.getByText('Primero escriba unas palabras').waitFor()
    await page.getByLabel('Su pregunta').fill('mis tomates tienen una mancha negra y hundida por debajo: tomato')
    await page.getByRole('button', { name: 'Empezar la ficha' }).click()
    await pickTomato(page, guide)
    await page.locator('#check-ask').waitFor()
    await lookAt(page, 'spanish-first-check')
    await lookInTheDark(page, 'spanish-first-check', { onlyOnPhones: true })
    await answerAsIn(page, guide, casebook(guide, TOMATO))
    await page.locator('.advice').waitFor()
    expect(await page.locator('.advice .kicker').innerText()).toBe('Lo que creemos que es')
    expect(await page.locator('.sureness').innerText()).toMatch(/de cada 100/)
    const spanish = guideIn(guide, 'es')
    const rot = spanish.problems[guide.problemNumbers.get('tomato-blossom-end-rot') ?? -1]
    expect(await page.locator('.advice .step-title').innerText()).toBe(rot?.name)
    expect(await page.locator('.advice .step-title span[lang="en"]').count()).toBe(rot !== undefined && spanish.untranslated.has(rot.name) ? 1 : 0)
    await lookAt(page, 'spanish-advice')
    await lookOnPaper(page, 'spanish-advice', { onlyOnPhones: true })

    // The link, opened by a browser that speaks English: the sheet is in its own language.
    const link = await page.getByRole('link', { name: 'Abrir en una página para imprimir' }).getAttribute('href')
    const later = await visit(String(link).replace(opened.service.url, ''), 'en-GB')
    await later.getByText('Lo que creemos que es').waitFor()
    expect(await later.evaluate(() => [document.documentElement.lang, document.title])).toEqual(['es', 'Su ficha de consulta sobre plantas'])
    await lookAt(later, 'spanish-case-page')
    await later.getByRole('button', { name: 'English' }).click()
    await later.getByText('What we think it is').waitFor()
    expect(await later.evaluate(() => document.documentElement.lang)).toBe('en')
    for (const each of [page, later]) await each.context().close()
  })

  it('hands over with a mail address, and gets a letter in Spanish with the way back', async () => {
    const post = await openMailServer()
    const service = await startTestService([], {}, undefined, { FRONDLINE_SMTP_URL: post.url, FRONDLINE_MAIL_FROM: 'helpline@larkmoor.example', FRONDLINE_PUBLIC_URL: 'https://plants.example' })
    const page = await visit('/', 'es-MX', service.url)
    await page.getByRole('button', { name: 'Español' }).click()
    await page.getByLabel('Su pregunta').fill('tomato: algo raro')
    await page.getByRole('button', { name: 'Empezar la ficha' }).click()
    await page.getByRole('button', { name: 'Preguntar a un especialista' }).click()
    await page.getByRole('heading', { name: 'Pregunte a un especialista' }).waitFor()
    await page.getByText('Añadir fotos').waitFor()
    await page.getByLabel('Correo electrónico').fill('ashdown')
    await page.getByRole('button', { name: 'Entregar mi ficha' }).click()
    await page.getByText('Eso no parece un correo.').waitFor()
    await lookAt(page, 'spanish-hand-over')
    await page.getByLabel('Correo electrónico').fill('ashdown@larkmoor.example')
    await page.getByRole('button', { name: 'Entregar mi ficha' }).click()
    await page.getByRole('heading', { name: 'Su ficha está con un especialista' }).waitFor()
    await lookAt(page, 'spanish-waiting')
    await expect.poll(() => post.letters.map(({ subject }) => subject), { timeout: 20_000 }).toEqual([expect.stringContaining('hemos recibido su pregunta')])
    expect(post.letters[0]?.text).toMatch(/Queremos responderle en menos de \d+ horas\.[^]*https:\/\/plants\.example\/case#/)
    await page.context().close()
    await service.stop()
    await post.close()
  })

  it('is shown plain pages in Spanish where no script runs, because the browser asks for it', async () => {
    const context = await opened.browser.newContext({ viewport: { width: phone.width, height: phone.height }, javaScriptEnabled: false, locale: 'es-ES' })
    const page = await context.newPage()
    await page.goto(`${opened.service.url}/ask`)
    await page.getByLabel('Su pregunta').fill('tomato: algo raro')
    await page.getByRole('button', { name: 'Empezar la ficha' }).click()
    await page.getByRole('heading', { name: 'Con sus palabras' }).waitFor()
    await page.getByRole('button', { name: 'English' }).click()
    await page.getByRole('heading', { name: 'In your words' }).waitFor()
    await context.close()
  })
})

function casebook(guide: Guide, name: string): WorkedCase {
  const worked = guide.casebook.find(({ id }) => id === name)
  if (worked === undefined) throw new Error(`The casebook has no case ${name}.`)
  return worked
}

async function languageOf(page: Page, selector: string): Promise<string | null> {
  return page.locator(selector).first().getAttribute('lang')
}

/** Takes the tomato with no complaint, wherever it stands: among what was heard, or in the list of all plants. */
async function pickTomato(page: Page, guide: Guide): Promise<void> {
  const tomato = guideIn(guide, 'es').hosts[guide.hostNumbers.get('tomato') ?? -1]?.name ?? ''
  const other = page.getByRole('button', { name: 'Otra cosa', exact: true })
  const field = page.getByLabel('Escriba el nombre de la planta')
  await other.or(field).first().waitFor()
  await lookAt(page, 'spanish-plant')
  if (await other.count() > 0) await other.click()
  await field.fill(tomato)
  await page.getByRole('button', { name: tomato, exact: true }).click()
  await page.getByRole('button', { name: 'Ninguna de estas, o no sé decirlo' }).click()
}

/** Answers check after check as a worked case has it, by the place of the answer: the words shown may be in either language. */
async function answerAsIn(page: Page, guide: Guide, worked: WorkedCase): Promise<void> {
  const spanish = guideIn(guide, 'es')
  for (let turn = 0; turn < 14; turn++) {
    await page.locator('#check-ask, .advice, .hand-over').first().waitFor()
    if (await page.locator('#check-ask').count() === 0) return
    const ask = await page.locator('#check-ask').innerText()
    const check = spanish.checks.find((one) => one.ask === ask)
    const label = check === undefined ? undefined : worked.findings.get(check.number)
    const place = check?.answers.findIndex((answer) => answer.label === label) ?? -1
    const state = await sheetState(page)
    await (place < 0 ? page.getByRole('button', { name: 'No lo tengo claro' }) : page.locator('.answers:not(.calm) .answer').nth(place)).click()
    await expect.poll(() => sheetState(page)).not.toBe(state)
  }
}

/** What is open: a second look asks the same check again. */
async function sheetState(page: Page): Promise<string> {
  return page.evaluate(() => {
    const root = document.querySelector('frondline-panel')?.shadowRoot
    return `${root?.querySelector('#check-ask')?.textContent}/${root?.querySelector('.second-look')?.textContent}`
  })
}
