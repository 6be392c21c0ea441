import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CaseView } from '../../shared/index.js'
import { type ServiceProcess, startProcess } from '../load/service-process.js'

let folder: string
let running: ServiceProcess | null

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'frondline-stop-'))
  running = null
})
afterEach(async () => {
  await running?.end('SIGKILL')
  await rm(folder, { recursive: true, force: true })
})

const start = async () => (running = await startProcess({ FRONDLINE_HOME: join(folder, 'home') }))

describe('a service told to stop while it is busy', { timeout: 240_000 }, () => {
  it('finishes what is under way, ends by itself, and has everything that it confirmed', async () => {
    const { url, end } = await start()
    const confirmed: string[] = []
    const broken: number[] = []
    let isUp = true
    const asker = async () => {
      while (isUp) {
        const reply = await fetch(`${url}/api/cases`, {
          method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ words: 'my lettuce is yellow' }),
        }).catch(() => null)
        if (reply === null) return
        if (reply.status === 201) confirmed.push(CaseView.parse(await reply.json()).link)
        else broken.push(reply.status)
      }
    }
    const asking = Promise.all([asker(), asker(), asker(), asker()])
    await expect.poll(() => confirmed.length, { timeout: 60_000 }).toBeGreaterThan(10)
    const code = await end('SIGTERM')
    isUp = false
    await asking
    expect(code).toBe(0)
    expect(broken).toEqual([])

    const again = await start()
    for (const link of confirmed) expect((await fetch(`${again.url}/api/cases/${link}`)).status).toBe(200)
  })
})
