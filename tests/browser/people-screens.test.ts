import * as OTPAuth from 'otpauth'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { newVisitor, STORY_MS, widths } from './browser.js'
import { lookAt } from './looking.js'
import { openedForTests } from './opened.js'

const opened = openedForTests()

describe('the people of the helpline', { timeout: 3 * STORY_MS }, () => {
  it('are invited by a link, set up one-time codes, sign in with one, and are removed', async () => {
    const administrator = await visitor()
    await administrator.request.post(`${opened.service.url}/api/sign-in`, { data: opened.service.passwordOf('administrator'), headers: { origin: opened.service.url } })
    await administrator.goto(`${opened.service.url}/people`)
    await administrator.locator('.person', { hasText: 'willow' }).waitFor()
    await administrator.getByLabel('Name to sign in with').fill('rowan')
    await administrator.getByRole('radio', { name: /^Specialist/ }).check()
    await administrator.getByRole('button', { name: 'Make an invitation link' }).click()
    await administrator.getByLabel('Invitation link').waitFor()
    await lookAtBoth(administrator, 'people')
    const link = await administrator.getByLabel('Invitation link').inputValue()

    const rowan = await visitor()
    await rowan.goto(link)
    await rowan.getByLabel('New password').fill('too short')
    await rowan.keyboard.press('Enter')
    await rowan.getByText('Please take at least 12 characters.').waitFor()
    await rowan.getByLabel('New password').fill('moss under nine stones')
    await rowan.getByLabel('The same once more').fill('moss under nine stones')
    await lookAtBoth(rowan, 'join')
    await rowan.keyboard.press('Enter')
    await rowan.getByRole('heading', { name: /^Waiting/ }).waitFor()

    await rowan.getByRole('link', { name: 'My account' }).click()
    await rowan.getByLabel('Your password').fill('moss under nine stones')
    await rowan.getByRole('button', { name: 'Begin' }).click()
    await rowan.locator('.qr').waitFor()
    await lookAtBoth(rowan, 'codes-begun')
    const secret = OTPAuth.Secret.fromBase32((await rowan.locator('.key').innerText()).replace(/\s/g, ''))
    const codes = new OTPAuth.TOTP({ secret })
    await rowan.getByLabel('Code', { exact: true }).fill(codes.generate())
    await rowan.getByRole('button', { name: 'Put them in force' }).click()
    await rowan.getByRole('heading', { name: 'Your recovery codes' }).waitFor()
    const recovery = await rowan.locator('.codes .key').first().innerText()
    await lookAtBoth(rowan, 'recovery-codes')
    await rowan.getByRole('button', { name: 'Sign out everywhere' }).click()

    await rowan.getByLabel('Name').fill('rowan')
    await rowan.getByLabel('Password').fill('moss under nine stones')
    await rowan.keyboard.press('Enter')
    await rowan.getByLabel('One-time code').waitFor()
    await lookAtBoth(rowan, 'sign-in-with-code')
    await rowan.keyboard.type('000000')
    await rowan.keyboard.press('Enter')
    await rowan.getByText('The code is not the one of this moment').waitFor()
    await rowan.getByLabel('One-time code').fill(recovery)
    await rowan.keyboard.press('Enter')
    await rowan.getByRole('heading', { name: /^Waiting/ }).waitFor()

    await administrator.reload()
    // Looking through the roles by keys changes nothing; the button does.
    await administrator.getByLabel('Role of rowan', { exact: true }).focus()
    await administrator.keyboard.press('ArrowUp')
    await expect.poll(() => administrator.getByLabel('Role of rowan', { exact: true }).inputValue()).toBe('volunteer')
    expect(await roleOf('rowan', administrator)).toBe('specialist')
    await lookAtBoth(administrator, 'people-role')
    await administrator.getByRole('button', { name: 'Change the role of rowan' }).click()
    await administrator.getByText('rowan is now volunteer').waitFor()
    expect(await roleOf('rowan', administrator)).toBe('volunteer')
    // An administrator may take calls, and finds the way to them.
    await administrator.getByRole('link', { name: 'Call sheet' }).click()
    await administrator.getByRole('heading', { name: 'A new call' }).waitFor()
    await administrator.goBack()
    await administrator.getByRole('button', { name: 'Remove rowan', exact: true }).click()
    await administrator.getByRole('button', { name: 'Yes, remove rowan' }).click()
    await administrator.getByText('rowan is removed').waitFor()
    expect(await administrator.locator('.person', { hasText: 'rowan' }).count()).toBe(0)
    await rowan.reload()
    await rowan.getByRole('heading', { name: 'Sign in' }).waitFor()
    await administrator.context().close()
    await rowan.context().close()
  })

  it('are told what to do when an invitation link is cut short', async () => {
    const page = await visitor()
    await page.goto(`${opened.service.url}/join#abc`)
    await page.getByText('This invitation link is cut short.').waitFor()
    await lookAtBoth(page, 'join-cut-short')
    await page.context().close()
  })
})

async function visitor(): Promise<Page> {
  const page = await (await newVisitor(opened.browser, widths[1])).newPage()
  page.setDefaultTimeout(30_000)
  return page
}

async function roleOf(name: string, page: Page): Promise<string | undefined> {
  const { people } = await (await page.request.get(`${opened.service.url}/api/people`)).json() as { people: { name: string, role: string }[] }
  return people.find(person => person.name === name)?.role
}

async function lookAtBoth(page: Page, name: string): Promise<void> {
  for (const { width, height } of widths) {
    await page.setViewportSize({ width, height })
    await lookAt(page, name)
  }
}
