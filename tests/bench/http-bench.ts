import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import autocannon from 'autocannon'
import { CaseView } from '../../shared/index.js'
import { startProcess } from '../load/service-process.js'

/** How many cases are open at once, and for how long each part is measured. */
const OPEN_CASES = 200
const SECONDS = Number(process.env['HTTP_BENCH_SECONDS'] ?? 20)
const MEMORY_SECONDS = Number(process.env['HTTP_BENCH_MEMORY_SECONDS'] ?? 60)

interface Part { readonly perSecond: number; readonly p50Ms: number; readonly p99Ms: number; readonly faults: number }

/**
 * The whole service over HTTP as a process of its own, beside a bare express route in another, in one run: reading a
 * case, answering a check, and the whole life of a case, with many cases open. Memory over time at the end.
 */
export async function httpBench(json: boolean): Promise<void> {
  const home = await mkdtemp(join(tmpdir(), 'frondline-bench-'))
  const bare = await startBare()
  const service = await startProcess({ FRONDLINE_HOME: home })
  try {
    const open: CaseView[] = []
    // Ten at a time: on a busy machine more would wait past the five seconds after which Node lets go of a connection.
    await Promise.all(Array.from({ length: WORKERS }, async () => {
      while (open.length < OPEN_CASES) open.push(await openLettuce(service.url))
    }))
    const results = {
      bare: await fire(bare.url),
      read: await fire(`${service.url}/api/cases/${open[0]?.link ?? ''}`),
      answer: await answering(service.url, open),
      life: await lives(service.url),
      memoryMb: await memoryOverTime(service.child.pid ?? 0, service.url),
    }
    print(results, json)
  } finally {
    await service.end('SIGTERM')
    bare.stop()
    await rm(home, { recursive: true, force: true })
  }
}

async function fire(url: string): Promise<Part> {
  const { requests, latency, non2xx, errors } = await autocannon({ url, connections: 10, duration: SECONDS })
  return { perSecond: requests.average, p50Ms: latency.p50, p99Ms: latency.p99, faults: non2xx + errors }
}

async function post(url: string, body: object): Promise<CaseView> {
  const reply = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  if (!reply.ok) throw new Error(`${url}: ${reply.status} ${await reply.text()}`)
  return CaseView.parse(await reply.json())
}

async function openLettuce(url: string): Promise<CaseView> {
  const { link, revision } = await post(`${url}/api/cases`, { words: 'something is wrong with the leaves of my lettuce, they look bad' })
  return post(`${url}/api/cases/${link}/place`, { revision, host: 'lettuce', node: null })
}

/** Answers the first check of each open case again and again, each time otherwise, ten cases at a time. */
async function answering(url: string, open: readonly CaseView[]): Promise<Part> {
  return timed((worker, turn) => {
    const mine = open.filter((_, at) => at % WORKERS === worker)
    const view = mine[turn % mine.length]
    if (view === undefined) throw new Error('There are fewer open cases than workers.')
    return answerOnce(url, view, Math.floor(turn / mine.length))
  })
}

const revisions = new Map<string, number>()

async function answerOnce(url: string, view: CaseView, round: number): Promise<void> {
  if (view.step.kind !== 'ask') throw new Error(`The case does not ask; its step is ${view.step.kind}.`)
  const { id, answers } = view.step.check
  const answer = answers[round % answers.length] ?? 'not sure'
  const revision = revisions.get(view.link) ?? view.revision
  const after = await post(`${url}/api/cases/${view.link}/answers`, { revision, check: id, answer })
  revisions.set(view.link, after.revision)
}

/** Words, place, two answers, hand-over: the time of the whole. */
function lives(url: string): Promise<Part> {
  return timed(async () => {
    let view = await openLettuce(url)
    for (let turn = 0; turn < 2 && view.step.kind === 'ask'; turn++) {
      view = await post(`${url}/api/cases/${view.link}/answers`, { revision: view.revision, check: view.step.check.id, answer: 'not sure' })
    }
    await post(`${url}/api/cases/${view.link}/hand-over`, { revision: view.revision })
  })
}

const WORKERS = 10
/** A case takes no more than 400 changes. */
const MOST_TURNS = OPEN_CASES / WORKERS * 380

async function timed(work: (worker: number, turn: number) => Promise<void>): Promise<Part> {
  const times: number[] = []
  let faults = 0
  const begun = performance.now()
  const until = begun + SECONDS * 1000
  await Promise.all(Array.from({ length: WORKERS }, async (_, worker) => {
    for (let turn = 0; turn < MOST_TURNS && performance.now() < until; turn++) {
      const from = performance.now()
      try {
        await work(worker, turn)
        times.push(performance.now() - from)
      } catch (fault) {
        if (faults++ === 0) process.stderr.write(`The first fault: ${fault instanceof Error ? fault.message : String(fault)}\n`)
      }
    }
  }))
  const seconds = (performance.now() - begun) / 1000
  times.sort((one, other) => one - other)
  const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? NaN
  return { perSecond: times.length / seconds, p50Ms: at(0.5), p99Ms: at(0.99), faults }
}

/** Resident memory of the service in MB, at eleven moments, while whole cases are worked. */
async function memoryOverTime(pid: number, url: string): Promise<number[]> {
  const samples: number[] = []
  let isOver = false
  const working = (async () => { while (!isOver) await openLettuce(url) })()
  for (let sample = 0; sample <= 10; sample++) {
    samples.push(await residentMb(pid))
    if (sample < 10) await new Promise((resolve) => setTimeout(resolve, MEMORY_SECONDS * 100))
  }
  isOver = true
  await working
  return samples
}

async function residentMb(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8')
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? NaN) / 1024)
}

/** A process with one express route that answers a small JSON object. */
async function startBare(): Promise<{ url: string; stop(): void }> {
  const child = spawn(process.execPath, ['--input-type=module', '-e', BARE], { stdio: ['ignore', 'pipe', 'inherit'] })
  const port = await new Promise<string>((resolve) => child.stdout.once('data', (chunk: Buffer) => { resolve(chunk.toString().trim()) }))
  return { url: `http://127.0.0.1:${port}/`, stop: () => void child.kill() }
}

const BARE = `
import express from 'express'
const app = express()
app.get('/', (_request, response) => { response.json({ ok: true }) })
const server = app.listen(0, '127.0.0.1', () => { console.log(server.address().port) })
`

function print({ memoryMb, ...parts }: Record<'bare' | 'read' | 'answer' | 'life', Part> & { readonly memoryMb: readonly number[] }, json: boolean): void {
  const round = (value: number): number => Math.round(value * 10) / 10
  const rounded = Object.entries(parts).map(([name, part]) => [name, {
    perSecond: round(part.perSecond), p50Ms: round(part.p50Ms), p99Ms: round(part.p99Ms), faults: part.faults,
    ofBare: Math.round(part.perSecond / parts.bare.perSecond * 1000) / 1000,
  }] as const)
  if (json) process.stdout.write(`${JSON.stringify({ openCases: OPEN_CASES, ...Object.fromEntries(rounded), memoryMb })}\n`)
  else {
    for (const [name, part] of rounded) process.stdout.write(`${name.padEnd(8)} ${String(part.perSecond).padStart(8)} a second  p50 ${part.p50Ms} ms  p99 ${part.p99Ms} ms  ${part.ofBare} of bare  ${part.faults} faults\n`)
    process.stdout.write(`memory in MB over ${MEMORY_SECONDS} s: ${memoryMb.join(' ')}\n`)
  }
}
