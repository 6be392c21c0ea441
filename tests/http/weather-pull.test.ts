import { createServer, type RequestListener, type Server } from 'node:http'
import { mkdtemp, rm } from 'node:fs/promises'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pino } from 'pino'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addWeatherStation, listWeatherStations, type WeatherRoom } from '../../src/desk/index.js'
import { fetchWeather } from '../../src/desk/season/fetch-weather.js'
import { pullWeather } from '../../src/desk/season/pull-weather.js'
import { keepDuties } from '../../src/http/duties.js'
import { dutiesOf } from '../../src/http/duty-list.js'
import { readSettings } from '../../src/http/settings.js'
import { openStore, type Store, weatherDays } from '../../src/store/index.js'
import { dropTestStore, testStore } from '../store/test-store.js'

let home: string
let store: Store
let room: WeatherRoom
let server: Server
let origin: string
let asked: string[]
let answer: RequestListener

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-pull-'))
  store = await openStore(await testStore(home))
  room = { db: store.db, now: () => new Date('2026-07-01T12:00:00.000Z') }
  for (const id of ['mill', 'school']) {
    await addWeatherStation(room, { id, name: id, district: 'holt-fen', latitude: 52.4, longitude: 0, clockMinutes: 0 })
  }
  asked = []
  answer = (_, response) => response.end('date,rain_mm\n2026-06-30,4\n')
  server = createServer((request, response) => {
    asked.push(request.url ?? '')
    answer(request, response)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
})

afterEach(async () => {
  server.closeAllConnections()
  await new Promise((resolve) => server.close(resolve))
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const url = () => `${origin}/{station}/daily.csv?key=secret`
const reads = async () => (await listWeatherStations(room)).map(({ station, reads: [last] }) => ({ station: station.id, outcome: last?.outcome, why: last?.why ?? null }))

describe('pulling weather', () => {
  it('asks for every station and keeps what it is given, noting the address without its secret', async () => {
    await pullWeather(room, [url()])
    expect(asked).toEqual(['/mill/daily.csv?key=secret', '/school/daily.csv?key=secret'])
    const states = await listWeatherStations(room)
    expect(states.map(({ reads: [last] }) => last)).toMatchObject([{ origin: `${origin}/mill/daily.csv`, outcome: 'kept', kept: 1 }, { outcome: 'kept', kept: 1 }])
    expect(await weatherDays(store.db, 1, '2026-06-30', '2026-06-30')).toMatchObject([{ rain_mm: 4 }])
  })

  it('goes on to the next station when one cannot be had, and says at the end which', async () => {
    answer = (request, response) => (request.url?.startsWith('/mill') === true ? response.writeHead(503).end('mend') : response.end('date,rain_mm\n2026-06-30,4\n'))
    await expect(pullWeather(room, [url()])).rejects.toThrow('mill: The weather service answered 503. Expected 200 with a CSV file.')
    expect(await reads()).toEqual([
      { station: 'mill', outcome: 'failed', why: 'The weather service answered 503. Expected 200 with a CSV file.' }, { station: 'school', outcome: 'kept', why: null },
    ])
  })

  it('leaves out faulty lines and says so, and keeps nothing of a page that is no weather file', async () => {
    answer = (request, response) => response.end(request.url?.startsWith('/mill') === true ? '<html>\n' : 'date,rain_mm\n2026-06-29,x\n2026-06-30,4\n')
    await expect(pullWeather(room, [url()])).rejects.toThrow('1 fault was left out; line 2: "x" does not fit.')
    expect(await reads()).toMatchObject([{ outcome: 'refused', why: expect.stringContaining('has neither "date" nor "time"') as string }, { outcome: 'kept', why: expect.stringContaining('line 2') as string }])
  })
})

describe('fetching from a weather service', () => {
  const limits = { timeoutMs: 5000, mostBytes: 1000 }
  const fetched = (more: Partial<typeof limits> = {}) => fetchWeather(`${origin}/?key=secret`, { ...limits, ...more })

  it('follows no redirection', async () => {
    answer = (_, response) => response.writeHead(302, { location: '/elsewhere' }).end()
    await expect(fetched()).rejects.toThrow('answered 302 and points elsewhere')
    expect(asked).toEqual(['/?key=secret'])
  })

  it('takes no more than so many bytes, however many come', async () => {
    answer = (_, response) => {
      const more = (): void => { if (response.write('x'.repeat(500))) setImmediate(more) }
      more()
    }
    await expect(fetched()).rejects.toThrow('larger than 1000 bytes')
  })

  it('waits no longer than so long, for the head and for the rest', async () => {
    answer = () => undefined
    await expect(fetched({ timeoutMs: 200 })).rejects.toThrow('did not answer in full within 0.2 seconds')
    answer = (_, response) => void response.write('date')
    await expect(fetched({ timeoutMs: 200 })).rejects.toThrow('did not answer in full within 0.2 seconds')
  })

  it('says that nobody answers, without the secret', async () => {
    await new Promise((resolve) => server.close(resolve))
    const gone = fetched()
    await expect(gone).rejects.toThrow('could not be reached (ECONNREFUSED)')
    await expect(gone).rejects.not.toThrow('secret')
  })
})

describe('the duty of pulling weather', () => {
  const desk = (pull: () => Promise<void>) => ({
    eraseDueContacts: () => Promise.resolve(0), sweepPictures: () => Promise.resolve(0), forgetOldMail: () => Promise.resolve(), pullWeather: pull,
  })

  it('is there only where an address is set', () => {
    const names = (environment: Record<string, string>) => dutiesOf(desk(() => Promise.resolve()), readSettings(environment).weather).map(({ name, everyMs }) => ({ name, everyMs }))
    expect(names({}).map(({ name }) => name)).not.toContain('pull weather')
    expect(names({ FRONDLINE_WEATHER_URL: url() })).toContainEqual({ name: 'pull weather', everyMs: 3_600_000 })
    expect(names({ FRONDLINE_WEATHER_URL: url(), FRONDLINE_WEATHER_MINUTES: '15' })).toContainEqual({ name: 'pull weather', everyMs: 900_000 })
  })

  it('is done by one of several processes, and its trouble is in the log', async () => {
    answer = (_, response) => response.writeHead(500).end()
    const other = await openStore(await testStore(home))
    const logged: string[] = []
    const log = pino({ level: 'trace' }, { write: (line: string) => void logged.push(line) })
    const [duty] = dutiesOf(desk(() => pullWeather(room, [url()])), { addresses: [url()], everyMinutes: 60 }).filter(({ name }) => name === 'pull weather')
    if (duty === undefined) throw new Error('there is no such duty')
    // Both look again and again, as two processes do; the clock stands still, so it is due once.
    const stops = [store, other].map((one) => keepDuties([{ name: duty.name, everyMs: 60, run: () => duty.run() }], one, () => new Date('2026-07-01T12:00:00.000Z'), log))
    await expect.poll(() => logged.length, { timeout: 10_000 }).toBeGreaterThanOrEqual(1)
    await new Promise((resolve) => setTimeout(resolve, 300))
    for (const stop of stops) await stop()
    await other.close()
    expect(asked).toHaveLength(2)
    expect(logged.join('')).toContain('The weather could not be pulled whole. mill: The weather service answered 500.')
  })
})

describe('the settings of the pull', () => {
  it.each(['http://weather.example/{station}.csv', 'https://weather.example/all.csv', 'ftp://weather.example/{station}', '{station}', 'https://weather.example/{station}.csv http://weather.example/{station}.csv'])(
    'refuse %s without repeating it', (address) => {
      const read = () => readSettings({ FRONDLINE_WEATHER_URL: `${address}?key=secret` })
      expect(read).toThrow('FRONDLINE_WEATHER_URL: Expected addresses of CSV files with {station}')
      expect(read).not.toThrow('secret')
    })

  it('take several addresses, over HTTPS or on this machine', () => {
    const text = 'https://weather.example/{station}/hourly.csv http://localhost:8000/{station}.csv  http://127.0.0.1/{station} http://[::1]/{station}'
    expect(readSettings({ FRONDLINE_WEATHER_URL: text }).weather).toEqual({ addresses: text.split(/\s+/), everyMinutes: 60 })
    expect(readSettings({}).weather).toBeNull()
    expect(() => readSettings({ FRONDLINE_WEATHER_MINUTES: '1' })).toThrow('FRONDLINE_WEATHER_MINUTES: Expected a whole number from 5 to 1440')
  })
})
