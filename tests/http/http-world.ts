import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Express } from 'express'
import { pino } from 'pino'
import supertest from 'supertest'
import type { CaseView, ProblemDocument, Role } from '../../shared/index.js'
import { liveStreams } from '../../src/http/live-streams.js'
import { type AppParts, buildApp } from '../../src/http/index.js'
import { NOON, openWorld, type World } from '../desk/desk-world.js'

export interface HttpWorld {
  readonly app: Express
  readonly desk: World
  /** Every line logged so far, as text. */
  readonly logged: string[]
  /** Makes a person, signs them in, and gives a way to ask as they do from our own pages. */
  signedIn(name: string, role: Role): Promise<Asker>
  close(): Promise<void>
}

/** One person's browser. */
export interface Asker {
  readonly cookie: string
  get(path: string): supertest.Test
  post(path: string, body?: object): supertest.Test
}

const PLENTY = { panelOrigins: [], behindHttps: false, casesPerMinute: 10_000, signInsPerMinute: 10_000 }

/** The whole app on a real store with the shipped guide, and small screens in place of the built ones. */
export async function openHttpWorld(settings: Partial<AppParts['settings']> = {}): Promise<HttpWorld> {
  const desk = await openWorld()
  const logged: string[] = []
  const log = pino({ level: 'trace' }, { write: (line: string) => void logged.push(line) })
  const webDir = await smallScreens()
  // Streams of events that end by themselves, so that asking for one comes to an end.
  const streams = liveStreams({ beatMs: 50, lastsMs: 300, most: 100 })
  const app = buildApp({ desk: desk.desk, log, settings: { ...PLENTY, ...settings }, webDir, streams, guideState: () => ({ guide: desk.guide.hash, since: NOON, refused: null }) })
  return {
    app, desk, logged,
    async signedIn(name, role) {
      const { password } = await desk.desk.addPerson(name, role)
      const reply = await supertest(app).post('/api/sign-in').send({ name, password })
      return asker(app, cookieOf(reply))
    },
    async close() {
      await desk.close()
      await rm(webDir, { recursive: true, force: true })
    },
  }
}

/** The name and value of the cookie that a reply sets. */
export function cookieOf(reply: supertest.Response): string {
  const [set = ''] = [reply.headers['set-cookie']].flat().filter((line) => line !== undefined)
  return set.split(';')[0] ?? ''
}

/** The reply's problem document. */
export function problemOf(reply: supertest.Response): ProblemDocument {
  return JSON.parse(reply.text) as ProblemDocument
}

/** Opens a case as the public. */
export async function openCase(app: Express, words: string): Promise<CaseView> {
  const reply = await supertest(app).post('/api/cases').send({ words }).expect(201)
  return reply.body as CaseView
}

function asker(app: Express, cookie: string): Asker {
  return {
    cookie,
    get: (path) => supertest(app).get(path).set('cookie', cookie),
    post(path, body) {
      const ask = supertest(app).post(path).set('cookie', cookie).set('sec-fetch-site', 'same-origin')
      return body === undefined ? ask : ask.send(body)
    },
  }
}

async function smallScreens(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'frondline-screens-'))
  await mkdir(join(folder, 'assets'))
  for (const page of ['demo', 'case', 'sheet', 'bench', 'sign-in', 'missing']) {
    await writeFile(join(folder, `${page}.html`), `<!doctype html><title>${page}</title>`)
  }
  await writeFile(join(folder, 'ask.html'), '<!doctype html><html lang="en"><title>ask</title><main><!-- the sheet --></main></html>')
  await writeFile(join(folder, 'seeing.html'), '<!doctype html><html lang="en"><title>seeing</title><main><!-- the sheet --></main></html>')
  await writeFile(join(folder, 'panel.js'), '"the panel"')
  await mkdir(join(folder, 'panel'))
  await writeFile(join(folder, 'panel', 'core-1a2b.js'), '"the first module"')
  await writeFile(join(folder, 'assets', 'ink-1a2b.css'), 'p {}')
  await writeFile(join(folder, 'secret.txt'), 'not a page')
  return folder
}
