import { createHash, randomBytes } from 'node:crypto'
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { CaseView, PhotoKept } from '../../shared/index.js'
import { openStore } from '../../src/store/index.js'
import { lettuceFiles } from '../guide/lettuce-world.js'
import { openMailServer } from '../mail/mail-server.js'
import { phoneJpeg } from '../photos/pictures.js'
import { type ServiceProcess, startProcess } from './service-process.js'

/** How long and on what. */
export interface SoakWishes {
  readonly kills: number
  /** The PostgreSQL database to use; SQLite when null. */
  readonly databaseUrl: string | null
  readonly askers: number
  readonly say: (line: string) => void
}

/** What was confirmed, and what was found amiss; all lists of faults are empty when nothing was lost or doubled. */
export interface SoakFindings {
  readonly kills: number
  readonly cases: number
  readonly answers: number
  readonly tickets: number
  readonly photos: number
  readonly letters: number
  readonly lost: readonly string[]
  readonly doubled: readonly string[]
}

/** One asker's case as far as the service confirmed it. */
interface Confirmed {
  readonly key: string
  link: string | null
  readonly answers: Map<string, string>
  photo: { readonly key: string; number: number | null }
  isHandedOver: boolean
}

/** No letter for this long, and none comes any more: longer than a claim holds that a killed process left behind. */
const QUIET_MS = 240_000

/**
 * Runs the service with askers at work, kills it with -9 at random moments, starts it again, and at the end compares what
 * it confirmed with what it has. Askers do as the panel does: without a confirmation they send the very same again.
 */
export async function soak({ kills, databaseUrl, askers, say }: SoakWishes): Promise<SoakFindings> {
  const folder = await mkdtemp(join(tmpdir(), 'frondline-soak-'))
  const mail = await openMailServer()
  // A guide of one plant, as a store does not care how large it is and every start reads it: more time under fire.
  for (const { path, text } of lettuceFiles()) await writeWithFolder(join(folder, path), text)
  const environment = {
    FRONDLINE_HOME: join(folder, 'home'), FRONDLINE_TREES: join(folder, 'trees'), FRONDLINE_SMTP_URL: mail.url,
    // A killed process leaves letters claimed; with this they are free again after some seconds, not a minute and a half.
    FRONDLINE_MAIL_SECONDS: '6', FRONDLINE_MAIL_FROM: 'helpline@larkmoor.example', FRONDLINE_PUBLIC_URL: 'https://plants.larkmoor.example',
    ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }),
  }
  const world: SoakWorld = { service: await startProcess(environment), isOver: false, confirmations: 0 }
  const cases: Confirmed[] = []
  const begun = Date.now()
  try {
    const working = Promise.all(Array.from({ length: askers }, () => ask(world, cases)))
    for (let kill = 1; kill <= kills; kill++) {
      await someWork(world)
      await world.service.end('SIGKILL')
      world.service = await startProcess(environment)
      if (kill % 10 === 0 || kill === kills) say(progress(begun, kill, kills, cases))
    }
    world.isOver = true
    await working
    say(`comparing ${cases.length} cases with what the service has`)
    const found = await compare(world.service.url, cases, kills)
    const findings = { ...found, doubled: [...found.doubled, ...await doubledRows(join(folder, 'home'), databaseUrl, cases)] }
    const arrived = (): number => new Set(mail.letters.map(({ messageId }) => messageId)).size
    for (let last = arrived(), since = Date.now(); last < findings.tickets && Date.now() - since < QUIET_MS; await pause(500)) {
      if (arrived() > last) [last, since] = [arrived(), Date.now()]
    }
    say(`${arrived()} letters for ${findings.tickets} tickets, ${minutes(begun)} minutes in all`)
    return { ...findings, ...letters(mail.letters.map(({ messageId, text }) => ({ id: messageId ?? '', text: text ?? '' })), cases, findings) }
  } finally {
    world.isOver = true
    await world.service.end('SIGKILL')
    await mail.close()
    await rm(folder, { recursive: true, force: true })
  }
}

function progress(begun: number, kill: number, kills: number, cases: readonly Confirmed[]): string {
  const left = (Date.now() - begun) / kill * (kills - kill) / 60_000
  const tickets = cases.filter(({ isHandedOver }) => isHandedOver).length
  return `${kill} of ${kills} kills, ${cases.length} cases, ${tickets} tickets, ${minutes(begun)} minutes, about ${left.toFixed(1)} to go`
}

const minutes = (begun: number): string => ((Date.now() - begun) / 60_000).toFixed(1)

async function writeWithFolder(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true })
  await writeFile(path, text)
}

interface SoakWorld {
  service: ServiceProcess
  isOver: boolean
  /** How many requests were confirmed so far, by all services. */
  confirmations: number
}

/** At most this many confirmations between two kills: two or three cases with four askers. */
const MOST_BETWEEN_KILLS = 24
/** A service that confirms nothing for this long is killed all the same. */
const LONGEST_BETWEEN_KILLS_MS = 15_000

/**
 * Returns at a random moment of the askers' work. Counted in what the service has confirmed and not in time, or a slow
 * machine would kill it before it has done anything, and the run would prove nothing.
 */
async function someWork(world: SoakWorld): Promise<void> {
  const enough = world.confirmations + Math.floor(Math.random() * (MOST_BETWEEN_KILLS + 1))
  const latest = Date.now() + LONGEST_BETWEEN_KILLS_MS
  while (world.confirmations < enough && Date.now() < latest) await pause(2)
  await pause(Math.random() * 30)
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))

/** One asker after another, each with a case: words, place, answers, a photo, hand-over. */
async function ask(world: SoakWorld, cases: Confirmed[]): Promise<void> {
  const photo = await phoneJpeg(40, 30, Math.floor(Math.random() * 255))
  while (!world.isOver) {
    const mine: Confirmed = {
      key: randomBytes(18).toString('base64url'), link: null, answers: new Map(),
      photo: { key: randomBytes(18).toString('base64url'), number: null }, isHandedOver: false,
    }
    cases.push(mine)
    let view = await confirmedView(world, '/api/cases', 'POST', { words: 'something is wrong with the leaves of my lettuce, they look bad', key: mine.key })
    mine.link = view.link
    const to = `/api/cases/${view.link}`
    view = await confirmedView(world, `${to}/place`, 'POST', { revision: view.revision, host: 'lettuce', node: null })
    for (let turn = 0; turn < 2 && view.step.kind === 'ask'; turn++) {
      const { id, answers } = view.step.check
      const answer = answers[Math.floor(Math.random() * answers.length)] ?? 'not sure'
      view = await confirmedView(world, `${to}/answers`, 'POST', { revision: view.revision, check: id, answer })
      mine.answers.set(id, answer)
    }
    const kept = await confirmed(world, `${to}/photos/${mine.photo.key}`, 'PUT', photo)
    const { photo: number, case: after } = PhotoKept.parse(kept)
    mine.photo.number = Number(number)
    await confirmedView(world, `${to}/hand-over`, 'POST', {
      revision: after.revision, note: mine.key, contact: { email: `${mine.key.toLowerCase()}@asker.example` },
    })
    mine.isHandedOver = true
  }
}

async function confirmedView(world: SoakWorld, path: string, method: 'POST', body: object): Promise<CaseView> {
  return CaseView.parse(await confirmed(world, path, method, body))
}

/** Sends until it is confirmed. A refusal is a fault of the service: the same again must be taken as the same. */
async function confirmed(world: SoakWorld, path: string, method: 'POST' | 'PUT', body: object): Promise<unknown> {
  for (;;) {
    try {
      const reply = await fetch(world.service.url + path, body instanceof Uint8Array
        ? { method, body: new Uint8Array(body) } : { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
      if (reply.ok) {
        const answer: unknown = await reply.json()
        world.confirmations++
        return answer
      }
      if (reply.status < 500 && reply.status !== 429) throw new Refused(`${method} ${path}: ${reply.status} ${await reply.text()}`)
    } catch (fault) {
      if (fault instanceof Refused) throw fault
    }
    await pause(50)
  }
}

class Refused extends Error {}

async function compare(url: string, cases: readonly Confirmed[], kills: number): Promise<SoakFindings> {
  const lost: string[] = []
  const doubled: string[] = []
  const count = { cases: 0, answers: 0, tickets: 0, photos: 0 }
  const links = new Set<string>()
  for (const { link, answers, photo, isHandedOver } of cases) {
    if (link === null) continue
    count.cases++
    if (links.has(link)) doubled.push(`case ${link}`)
    links.add(link)
    const reply = await fetch(`${url}/api/cases/${link}`)
    if (!reply.ok) { lost.push(`case ${link}`); continue }
    const view = CaseView.parse(await reply.json())
    const given = new Map(view.lines.map((line) => [line.check.id, line.answer] as const))
    for (const [check, answer] of answers) {
      count.answers++
      if (given.get(check) !== answer) lost.push(`answer ${check} of ${link}`)
    }
    if (new Set(view.lines.map(({ check }) => check.id)).size !== view.lines.length) doubled.push(`answers of ${link}`)
    if (photo.number !== null) {
      count.photos++
      const picture = await fetch(`${url}/api/cases/${link}/photos/${photo.number}/large`)
      if (!picture.ok || (await picture.arrayBuffer()).byteLength < 100) lost.push(`photo of ${link}`)
      if (view.photos.length > 1) doubled.push(`photo of ${link}`)
    }
    if (isHandedOver) {
      count.tickets++
      if (view.ticket === null) lost.push(`ticket of ${link}`)
    }
  }
  return { kills, ...count, letters: 0, lost, doubled }
}

/**
 * What the store itself holds twice, though the screens show it once: more cases than keys were sent, and answers, photos,
 * hand-overs and tickets of one case that are there again. Each asker sends each of these under one key, once.
 */
async function doubledRows(home: string, databaseUrl: string | null, cases: readonly Confirmed[]): Promise<string[]> {
  const store = await openStore({ home, databaseUrl, connections: 2 })
  try {
    const { db } = store
    const opened = await db.selectFrom('case_file').select('id').execute()
    const changes = await db.selectFrom('case_change').select((is) => ['case_id', 'kind', 'content', is.fn.countAll<number>().as('times')])
      .where('kind', 'in', ['answer', 'photo', 'hand-over', 'place']).groupBy(['case_id', 'kind', 'content'])
      .having((is) => is.fn.countAll(), '>', 1).execute()
    const tickets = await db.selectFrom('ticket').select((is) => ['case_id', is.fn.countAll<number>().as('times')]).groupBy('case_id')
      .having((is) => is.fn.countAll(), '>', 1).execute()
    return [
      ...(opened.length > cases.length ? [`${opened.length} cases of ${cases.length} keys`] : []),
      ...changes.map(({ case_id: id, kind, content, times }) => `${kind} ${content} of case ${id}, ${times} times`),
      ...tickets.map(({ case_id: id, times }) => `ticket of case ${id}, ${times} times`),
    ]
  } finally {
    await store.close()
  }
}

/**
 * Each ticket has its letter, and the letters of one ticket are one letter: SMTP cannot say whether a letter whose reply was
 * lost had arrived (RFC 5321, section 4.5.5 and RFC 1047), so one may come again, with the same Message-ID.
 */
function letters(
  sent: readonly { readonly id: string; readonly text: string }[], cases: readonly Confirmed[], { lost, doubled }: SoakFindings,
): Pick<SoakFindings, 'letters' | 'lost' | 'doubled'> {
  const ofLink = new Map<string, Set<string>>()
  const known = new Set(cases.map(({ link }) => link))
  for (const { id, text } of sent) {
    const named = /\/case#([\w-]+)/.exec(text)?.[1] ?? ''
    const link = known.has(named) ? named : createHash('sha256').update(text).digest('hex')
    ofLink.set(link, (ofLink.get(link) ?? new Set()).add(id))
  }
  const handed = cases.filter((one) => one.isHandedOver)
  const unsent = handed.filter(({ link }) => link === null || !ofLink.has(link)).map(({ link }) => `letter of ${String(link)}`)
  const twice = [...ofLink].filter(([, ids]) => ids.size > 1).map(([link]) => `letter of ${link}`)
  return { letters: new Set(sent.map(({ id }) => id)).size, lost: [...lost, ...unsent], doubled: [...doubled, ...twice] }
}
