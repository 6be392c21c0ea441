import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import autocannon from 'autocannon'
import { z } from 'zod'
import { CaseView } from '../../shared/index.js'
import { startProcess } from '../load/service-process.js'

/** How many cases are open at once, and for how long each part is measured. */
const OPEN_CASES = 200
const SECONDS = Number(process.env['HTTP_BENCH_SECONDS'] ?? 20)

interface Part {
  readonly perSecond: number
  readonly p50Ms: number
  readonly p99Ms: number
  readonly faults: number
  /** Time of the processor that the server took for one request, in microseconds; says more than waits on a shared machine. */
  readonly cpuMicroseconds: number
}

/**
 * The whole service over HTTP as a process of its own, beside a bare express route in another, in one run: reading a
 * case, answering a check, and the whole life of a case, with many cases open. Memory over time at the end.
 * @param minutes for how long memory is looked at
 */
export async function httpBench(json: boolean, minutes = 1): Promise<void> {
  const home = await mkdtemp(join(tmpdir(), 'frondline-bench-'))
  const bare = await startBare()
  const service = await startProcess({ FRONDLINE_HOME: home })
  const pid = service.child.pid ?? 0
  try {
    const open: CaseView[] = []
    // Ten at a time: on a busy machine more would wait past the five seconds after which Node lets go of a connection.
    await Promise.all(Array.from({ length: WORKERS }, async () => {
      while (open.length < OPEN_CASES) open.push(await openLettuce(service.url))
    }))
    const results = {
      bare: await fire(bare.pid, bare.url, [{ path: '/' }]),
      read: await fire(pid, service.url, open.map(({ link }) => ({ path: `/api/cases/${link}` }))),
      answer: await fire(pid, service.url, [answering(open)]),
      life: await lives(pid, service.url),
      memoryMb: await memoryOverTime(pid, service.url, minutes),
    }
    print(results, minutes, json)
  } finally {
    await service.end('SIGTERM')
    bare.stop()
    await rm(home, { recursive: true, force: true })
  }
}

async function fire(pid: number, url: string, requests: autocannon.Request[]): Promise<Part> {
  const from = await cpuMicroseconds(pid)
  const { requests: made, latency, non2xx, errors } = await autocannon({ url, requests, connections: WORKERS, duration: SECONDS })
  const cpu = (await cpuMicroseconds(pid) - from) / made.total
  return { perSecond: made.average, p50Ms: latency.p50, p99Ms: latency.p99, faults: non2xx + errors, cpuMicroseconds: cpu }
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

/** Answers the first check of an open case that nobody is at, each time otherwise. */
function answering(open: readonly CaseView[]): autocannon.Request {
  const free = open.map(({ link, revision, step }) => {
    if (step.kind !== 'ask') throw new Error(`The case does not ask; its step is ${step.kind}.`)
    return { link, revision, check: step.check.id, answers: step.check.answers, turn: 0 }
  })
  return {
    setupRequest(request, context) {
      const one = free.shift()
      if (one === undefined) throw new Error('There are fewer open cases than connections.')
      const answer = one.answers[one.turn++ % one.answers.length] ?? 'not sure'
      Object.assign(context, { one })
      return {
        ...request, method: 'POST', path: `/api/cases/${one.link}/answers`, headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ revision: one.revision, check: one.check, answer }),
      }
    },
    onResponse(status, body, context) {
      const { one } = context as { one: typeof free[number] }
      if (status === 200) one.revision = z.object({ revision: z.number() }).parse(JSON.parse(body)).revision
      free.push(one)
    },
  }
}

/** Words, place, two answers, hand-over: the time of the whole. */
function lives(pid: number, url: string): Promise<Part> {
  return timed(pid, async () => {
    let view = await openLettuce(url)
    for (let turn = 0; turn < 2 && view.step.kind === 'ask'; turn++) {
      view = await post(`${url}/api/cases/${view.link}/answers`, { revision: view.revision, check: view.step.check.id, answer: 'not sure' })
    }
    await post(`${url}/api/cases/${view.link}/hand-over`, { revision: view.revision })
  })
}

const WORKERS = 10

async function timed(pid: number, work: () => Promise<void>): Promise<Part> {
  const cpuFrom = await cpuMicroseconds(pid)
  const times: number[] = []
  let faults = 0
  const begun = performance.now()
  const until = begun + SECONDS * 1000
  await Promise.all(Array.from({ length: WORKERS }, async () => {
    while (performance.now() < until) {
      const from = performance.now()
      try {
        await work()
        times.push(performance.now() - from)
      } catch (fault) {
        if (faults++ === 0) process.stderr.write(`The first fault: ${fault instanceof Error ? fault.message : String(fault)}\n`)
      }
    }
  }))
  const seconds = (performance.now() - begun) / 1000
  times.sort((one, other) => one - other)
  const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? NaN
  const cpu = (await cpuMicroseconds(pid) - cpuFrom) / times.length
  return { perSecond: times.length / seconds, p50Ms: at(0.5), p99Ms: at(0.99), faults, cpuMicroseconds: cpu }
}

/** Resident memory of the service in MB, at eleven moments, while whole cases are worked. */
async function memoryOverTime(pid: number, url: string, minutes: number): Promise<number[]> {
  const samples: number[] = []
  let isOver = false
  const working = (async () => { while (!isOver) await openLettuce(url) })()
  for (let sample = 0; sample <= 10; sample++) {
    samples.push(await residentMb(pid))
    if (sample < 10) await new Promise((resolve) => setTimeout(resolve, minutes * 6000))
  }
  isOver = true
  await working
  return samples
}

async function residentMb(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8')
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? NaN) / 1024)
}

/** All time of the processor that a process has taken so far; /proc counts it in hundredths of a second (proc(5)). */
async function cpuMicroseconds(pid: number): Promise<number> {
  const fields = (await readFile(`/proc/${pid}/stat`, 'utf8')).split(') ')[1]?.split(' ') ?? []
  return (Number(fields[11]) + Number(fields[12])) * 10_000
}

/** A process with one express route that answers a small JSON object. */
async function startBare(): Promise<{ pid: number; url: string; stop(): void }> {
  const child = spawn(process.execPath, ['--input-type=module', '-e', BARE], { stdio: ['ignore', 'pipe', 'inherit'] })
  const port = await new Promise<string>((resolve) => child.stdout.once('data', (chunk: Buffer) => { resolve(chunk.toString().trim()) }))
  return { pid: child.pid ?? 0, url: `http://127.0.0.1:${port}`, stop: () => void child.kill() }
}

const BARE = `
import express from 'express'
const app = express()
app.get('/', (_request, response) => { response.json({ ok: true }) })
const server = app.listen(0, '127.0.0.1', () => { console.log(server.address().port) })
`

function print({ memoryMb, ...parts }: Record<'bare' | 'read' | 'answer' | 'life', Part> & { readonly memoryMb: readonly number[] }, minutes: number, json: boolean): void {
  const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places
  const rounded = Object.entries(parts).map(([name, part]) => [name, {
    perSecond: round(part.perSecond, 1), p50Ms: round(part.p50Ms, 1), p99Ms: round(part.p99Ms, 1), faults: part.faults,
    cpuMicroseconds: round(part.cpuMicroseconds, 0), ofBare: round(part.perSecond / parts.bare.perSecond, 3),
    cpuOfBare: round(parts.bare.cpuMicroseconds / part.cpuMicroseconds, 3),
  }] as const)
  if (json) process.stdout.write(`${JSON.stringify({ openCases: OPEN_CASES, ...Object.fromEntries(rounded), minutes, memoryMb })}\n`)
  else {
    for (const [name, part] of rounded) process.stdout.write(`${name.padEnd(8)} ${String(part.perSecond).padStart(8)} a second  p50 ${part.p50Ms} ms  p99 ${part.p99Ms} ms  ${part.ofBare} of bare  ${part.cpuMicroseconds} µs of processor, ${part.cpuOfBare} of bare  ${part.faults} faults\n`)
    process.stdout.write(`memory in MB over ${minutes} min: ${memoryMb.join(' ')}\n`)
  }
}
