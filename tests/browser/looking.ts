import { mkdir, readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type * as axeCore from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Where the pictures of the screens go, for people to look at; git leaves this folder out. None are taken when it is empty. */
export const picturesFolder = process.env['FRONDLINE_PICTURES'] ?? fileURLToPath(new URL('../../dist/pictures', import.meta.url))

/**
 * Widths at which a phone's screens are looked at besides: 320 px is what a window of 1280 px is at 400 % zoom (WCAG 2.2,
 * 1.4.10, reflow), 768 px a tablet's.
 */
const WIDTHS_BESIDES = [320, 768]

/**
 * Looks at the screen as it stands: nothing against WCAG 2.2 A and AA that axe can see, nothing wider than the window,
 * and a picture kept. A phone's screen is looked at in the widths besides, too.
 */
export async function lookAt(page: Page, name: string): Promise<void> {
  // Fades end before colours are measured.
  await page.evaluate(() => Promise.all(document.getAnimations().map(animation => animation.finished.catch(() => null))))
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 }
  if (picturesFolder !== '') await mkdir(picturesFolder, { recursive: true })
  await measure(page, name)
  expect(await faultsSeenByAxe(page), `${name} at ${width} px`).toEqual([])
  // Colours and paper change nothing of what fits into a width.
  if (width !== PHONE || /-(dark|contrast|print)$/.test(name)) return
  for (const besides of WIDTHS_BESIDES) {
    await page.setViewportSize({ width: besides, height })
    await measure(page, name)
  }
  await page.setViewportSize({ width, height })
}

const PHONE = 390

/** Takes the picture, and finds what would have to be scrolled sideways. */
async function measure(page: Page, name: string): Promise<void> {
  const width = page.viewportSize()?.width ?? 0
  // The widths besides are measured only: a picture takes longer than all the rest.
  if (picturesFolder !== '' && !WIDTHS_BESIDES.includes(width)) await page.screenshot({ path: join(picturesFolder, `${name}-${width}.png`), fullPage: true })
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(overflow, `${name} at ${width} px is wider than the window by`).toBeLessThanOrEqual(0)
}

/**
 * Whether colours and paper are looked at here: once a screen, at the wide window where a story is told at both widths.
 * A screen that is only a phone's says so.
 */
export interface Light { readonly onlyOnPhones?: boolean }
const isLookedAtElsewhere = (page: Page, { onlyOnPhones = false }: Light) => page.viewportSize()?.width === PHONE && !onlyOnPhones

/** The same in the dark, and with more contrast asked for; afterwards the light is on again. */
export async function lookInTheDark(page: Page, name: string, light: Light = {}): Promise<void> {
  if (isLookedAtElsewhere(page, light)) return
  await page.emulateMedia({ colorScheme: 'dark' })
  await lookAt(page, `${name}-dark`)
  await page.emulateMedia({ colorScheme: 'light', contrast: 'more' })
  await lookAt(page, `${name}-contrast`)
  await page.emulateMedia({ colorScheme: 'light', contrast: 'no-preference' })
}

/** The same as it would be printed: black on white, and nothing left that can only be pressed. */
export async function lookOnPaper(page: Page, name: string, light: Light = {}): Promise<void> {
  if (isLookedAtElsewhere(page, light)) return
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  await lookAt(page, `${name}-print`)
  const seen = await page.evaluate(() => {
    const roots = [document, ...[...document.querySelectorAll('*')].flatMap(element => element.shadowRoot ?? [])]
    const all = (selector: string) => roots.flatMap(root => [...root.querySelectorAll(selector)]).filter(element => element.checkVisibility())
    return { pressed: all('button').map(button => button.textContent), grounds: [...new Set(all('.sheet, .advice, .flag').map(part => getComputedStyle(part).color))] }
  })
  expect(seen.pressed, `${name} on paper still shows`).toEqual([])
  expect(seen.grounds, `${name} on paper is written in`).toEqual(['rgb(0, 0, 0)'])
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' })
}

/** What axe-core finds against WCAG 2.2 A and AA, shadow roots included. */
export async function faultsSeenByAxe(page: Page): Promise<string[]> {
  // evaluate() comes from outside the page, so the strict content security policy stays in force.
  if (!await page.evaluate(() => 'axe' in window)) await page.evaluate(await axeSource())
  return page.evaluate(async tags => {
    const { axe } = window as unknown as { axe: typeof axeCore }
    // What passes is not asked for: naming every such node took a fifth of the time.
    const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] })
    return violations.map(violation => `${violation.id}: ${violation.nodes.map(node => `${String(node.target)} ${node.failureSummary ?? ''}`).join(' | ')}`)
  }, ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
}

let source: string | null = null
async function axeSource(): Promise<string> {
  source ??= await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
  return source
}
