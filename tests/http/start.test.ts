import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { pino } from 'pino'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { GuideState } from '../../shared/index.js'
import { whyNotFitForProduction } from '../../src/http/fit-for-production.js'
import { readSettings, type RunningService, startService } from '../../src/http/index.js'
import { shippedGuide } from '../desk/desk-world.js'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles } from '../guide/lettuce-world.js'
import { dropTestStore, testStore } from '../store/test-store.js'
import { guideKeeping } from '../whole-guide.js'

let folder: string
let running: RunningService[]
let clearing: (() => Promise<void>)[]
beforeEach(async () => {
  clearing = []
  folder = await mkdtemp(join(tmpdir(), 'frondline-start-'))
  running = []
})
afterEach(async () => {
  for (const service of running) await service.stop()
  for (const home of ['home', 'other']) await dropTestStore(databaseName(home))
  await rm(folder, { recursive: true, force: true })
  for (const clear of clearing) await clear()
})

const quiet = pino({ level: 'silent' })

async function start(environment: Record<string, string> = {}): Promise<RunningService> {
  const home = environment.FRONDLINE_HOME ?? join(folder, 'home')
  const { databaseUrl } = await testStore(databaseName(home))
  const settings = readSettings({
    FRONDLINE_PORT: '0', FRONDLINE_HOME: home, ...(databaseUrl == null ? {} : { DATABASE_URL: databaseUrl }), ...environment,
  })
  const service = await startService(settings, quiet, { webDir: folder, guideKeeping: guideKeeping() })
  running.push(service)
  return service
}

/** Homes of one test have the same names as those of another; their databases may not. */
const databaseName = (home: string): string => `${folder}-${basename(home)}`

async function stop(service: RunningService): Promise<void> {
  await service.stop()
  running = running.filter((one) => one !== service)
}

const post = (service: RunningService, path: string, body: object) => fetch(service.url + path, {
  method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body),
})

describe('starting the service', { timeout: 180_000 }, () => {
  it('answers on its port, makes the demonstration\'s accounts once, and keeps cases over a restart', async () => {
    const { trees } = await smallGuide()
    const service = await start({ FRONDLINE_TREES: trees })
    expect(service.newAccounts.map(({ name, role }) => `${name} ${role}`))
      .toEqual(['willow volunteer', 'sedge specialist', 'alder administrator'])
    expect(await (await fetch(`${service.url}/healthz`)).json()).toEqual({ ok: true })
    const opened = await (await post(service, '/api/cases', { words: 'my lettuce is yellow' })).json() as { link: string }
    await stop(service)
    await expect(fetch(`${service.url}/healthz`)).rejects.toThrow()

    const again = await start({ FRONDLINE_TREES: trees })
    expect(again.newAccounts).toEqual([])
    expect(await (await fetch(`${again.url}/api/cases/${opened.link}`)).json()).toEqual(opened)
    const [{ name, password } = { name: '', password: '' }] = service.newAccounts
    expect((await post(again, '/api/sign-in', { name, password })).status).toBe(200)
  })

  it('says in a sentence that another program has the port, and leaves nothing open', async () => {
    const { trees } = await smallGuide()
    const service = await start({ FRONDLINE_TREES: trees })
    const port = new URL(service.url).port
    const home = join(folder, 'other')
    await expect(start({ FRONDLINE_PORT: port, FRONDLINE_HOME: home, FRONDLINE_TREES: trees }))
      .rejects.toThrow(`Port ${port} on 127.0.0.1 cannot be opened: another program has it; set FRONDLINE_PORT to another.`)
    await start({ FRONDLINE_HOME: home, FRONDLINE_TREES: trees })
  })

  it('refuses the demonstration region in production', async () => {
    await expect(start({ NODE_ENV: 'production', FRONDLINE_CONTACT_KEY: Buffer.alloc(32, 1).toString('base64') })).rejects.toThrow(
      'trees/region.yaml describes the demonstration region (demonstration: true).')
  })

  it('refuses a guide with errors and shows where they are', async () => {
    const { trees, write } = await smallGuide()
    await write('hosts/broken.yaml', 'host: [\n')
    await expect(start({ FRONDLINE_TREES: trees })).rejects.toThrow(/The guide has \d+ errors?\. Run frondline proof\.\n[^]*broken\.yaml/)
  })

  it('follows the guide\'s files while it runs, and keeps the sound guide when they break', async () => {
    const { trees } = await smallGuide()
    const service = await start({ FRONDLINE_TREES: trees })
    const helpline = async () => (await (await fetch(`${service.url}/api/region`)).json() as { helpline: string }).helpline
    const region = join(trees, 'region.yaml')
    const shipped = await readFile(region, 'utf8')
    expect(await helpline()).toBe('Larkmoor Plant Helpline')

    await writeFile(region, shipped.replace('Larkmoor Plant Helpline', 'Eastmere Plant Helpline'))
    await expect.poll(helpline, { timeout: 45_000, interval: 200 }).toBe('Eastmere Plant Helpline')

    const state = await askedAsSpecialist(service)
    const renewed = await state()
    expect(renewed.refused).toBeNull()

    await writeFile(region, 'region: [')
    await expect.poll(async () => (await state()).refused?.reason, { timeout: 45_000, interval: 200 }).toMatch(/^The guide has \d+ errors?\.[^]*region\.yaml/)
    expect(await state()).toMatchObject({ guide: renewed.guide, since: renewed.since })
    expect(await helpline()).toBe('Eastmere Plant Helpline')
    await writeFile(region, shipped)
    await expect.poll(helpline, { timeout: 45_000, interval: 200 }).toBe('Larkmoor Plant Helpline')
    const mended = await state()
    expect(mended.refused).toBeNull()
    expect(mended.guide).not.toBe(renewed.guide)
    expect(Date.parse(mended.since)).toBeGreaterThan(Date.parse(renewed.since))
  })
})

/** One host is enough where a guide has to change or break, and is read in a moment. */
async function smallGuide(): ReturnType<typeof makeGuideFolder> {
  const guide = await makeGuideFolder(lettuceFiles())
  clearing.push(guide.clear)
  return guide
}

/** The state of the guide as the people of the helpline are told it. */
async function askedAsSpecialist({ url, newAccounts }: RunningService): Promise<() => Promise<GuideState>> {
  const account = newAccounts.find(({ role }) => role === 'specialist')
  const reply = await fetch(`${url}/api/sign-in`, {
    method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ name: account?.name, password: account?.password }),
  })
  const cookie = reply.headers.getSetCookie()[0]?.split(';')[0] ?? ''
  return async () => await (await fetch(`${url}/api/guide/state`, { headers: { cookie } })).json() as GuideState
}

describe('whether a guide is fit for production', () => {
  it('takes a region of its own with every number that its red flags name', async () => {
    const guide = await shippedGuide()
    const region = { ...guide.region, demonstration: false }
    expect(whyNotFitForProduction({ ...guide, region })).toBeNull()
    expect(whyNotFitForProduction({ ...guide, region: { ...region, numbers: new Map() } }))
      .toBe('trees/region.yaml has no numbers to call. Add them under "numbers" before running in production.')
    const [name = '', number] = [...region.numbers].find(([key]) => (
      guide.redFlags.every(({ card }) => card.call.every((call) => call === key || region.numbers.has(call))))) ?? []
    const only = number === undefined ? new Map() : new Map([[name, number]])
    expect(whyNotFitForProduction({ ...guide, region: { ...region, numbers: only } }))
      .toMatch(/^trees\/region\.yaml has no number for ".+", which red flags name\./)
  })
})
