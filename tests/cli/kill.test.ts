import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { CaseView } from '../../shared/index.js'

let home: string
let running: ChildProcess | null = null

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-kill-'))
})

afterEach(async () => {
  running?.kill('SIGKILL')
  await rm(home, { recursive: true, force: true })
})

/** Starts the service as its own process and gives its address once it says that it is up. */
async function start(): Promise<string> {
  const child = spawn(process.execPath, ['src/cli/frondline.mjs', 'serve', '--port', '0', '--home', home], { stdio: ['ignore', 'pipe', 'inherit'] })
  running = child
  return new Promise((resolve, reject) => {
    let said = ''
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString()
      const url = /running at (http:\S+)/.exec(said)?.[1]
      if (url !== undefined) resolve(url)
    })
    child.once('exit', (code) => { reject(new Error(`The service ended with ${String(code)}: ${said}`)) })
  })
}

async function killHard(): Promise<void> {
  const child = running
  if (child === null) return
  running = null
  const ended = new Promise((resolve) => child.once('exit', resolve))
  child.kill('SIGKILL')
  await ended
}

async function post(url: string, body: unknown): Promise<CaseView> {
  const reply = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  return CaseView.parse(await reply.json())
}

async function get(url: string): Promise<CaseView> {
  return CaseView.parse(await (await fetch(url)).json())
}

describe('a service killed in the middle of a case', () => {
  it('loses nothing that was answered', async () => {
    let url = await start()
    let view = await post(`${url}/api/cases`, { words: 'my maple does not look well this year', district: 'eastmere' })
    view = await post(`${url}/api/cases/${view.link}/place`, { revision: view.revision, host: 'maple', node: null })
    const given: string[] = []
    for (let turn = 0; turn < 2 && view.step.kind === 'ask'; turn++) {
      const { check } = view.step
      view = await post(`${url}/api/cases/${view.link}/answers`, { revision: view.revision, check: check.id, answer: 'not sure' })
      given.push(check.id)
      await killHard()
      url = await start()
      const again = await get(`${url}/api/cases/${view.link}`)
      expect(again).toEqual(view)
      // Besides what was said in the question, which the sheet holds from the start.
      expect(again.lines.filter(({ from }) => from === 'asked').map((line) => line.check.id).sort()).toEqual([...given].sort())
    }
    expect(given).toHaveLength(2)
    const handed = await post(`${url}/api/cases/${view.link}/hand-over`, { revision: view.revision, note: 'please look' })
    await killHard()
    url = await start()
    const last = await get(`${url}/api/cases/${view.link}`)
    expect(last).toEqual(handed)
    expect(last.ticket?.state).toBe('waiting')
  }, 240_000)
})
