import { mkdtemp, open, rm, stat } from 'node:fs/promises'
import { createReadStream } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { addWeatherStation, keepWeather, weatherNow, type WeatherRoom } from '../../src/desk/index.js'
import { readWeatherCsv } from '../../src/desk/season/read-weather-csv.js'
import { seededRandom } from '../../src/engine/index.js'
import { loadGuide } from '../../src/guide/index.js'
import { openStore, weatherStationByName } from '../../src/store/index.js'

const STATIONS = 20
const YEARS = 10
const HOURS = YEARS * 8766
const FIRST = Date.UTC(2016, 0, 1)
const LAST_DAY = new Date(FIRST + (HOURS - 24) * 3_600_000).toISOString().slice(0, 10)
/** Stations whose records go into the store: enough to see that a page's time does not grow with all of them. */
const KEPT = Number(process.env['SEASON_BENCH_KEPT'] ?? 2)
const PAGES = 50

const setting = { clockMinutes: 0, latest: '2030-01-01' }
const seconds = (from: number): number => (performance.now() - from) / 1000

/** Ten years of hourly records from twenty stations: reading and checking the files, keeping some, and a district's weather. */
export async function weatherBench(json: boolean): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'frondline-season-bench-'))
  try {
    const files: string[] = []
    for (let station = 0; station < STATIONS; station++) files.push(await writeStation(folder, station))
    const figures = { read: await measureReading(files), keep: await measureKeeping(folder, files.slice(0, KEPT)) }
    if (json) process.stdout.write(`${JSON.stringify(figures, null, 2)}\n`)
    else {
      const { read, keep } = figures
      process.stdout.write(`${read.rows} hours of ${STATIONS} stations (${read.megabytes} MB) read and checked in ${read.seconds.toFixed(1)} s, ${read.cpuSeconds.toFixed(1)} s of one core, ${read.faults} faults\n`)
      process.stdout.write(`${keep.rows} hours kept in ${keep.seconds.toFixed(1)} s, ${Math.round(keep.rows / keep.seconds)} a second\n`)
      process.stdout.write(`a district's weather, first time ${keep.firstMs.toFixed(0)} ms, reckoned anew ${keep.anewMs.toFixed(0)} ms (median of ${PAGES}), unchanged ${keep.unchangedMs.toFixed(2)} ms\n`)
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function writeStation(folder: string, station: number): Promise<string> {
  const random = seededRandom(station + 1)
  const file = join(folder, `station-${station}.csv`)
  const handle = await open(file, 'w')
  let lines = ['time,temperature_c,humidity_pct,rain_mm,wet_minutes']
  for (let hour = 0; hour < HOURS; hour++) {
    const time = new Date(FIRST + hour * 3_600_000).toISOString().slice(0, 16)
    const temperature = 9 - 8 * Math.cos((2 * Math.PI * hour) / 8766) - 4 * Math.cos((2 * Math.PI * (hour - 3)) / 24) + 4 * random() - 2
    const humidity = Math.round(60 + 40 * random())
    lines.push(`${time},${temperature.toFixed(1)},${humidity},${random() < 0.1 ? (3 * random()).toFixed(1) : 0},${humidity > 90 ? 60 : 0}`)
    if (lines.length === 5000) {
      await handle.write(`${lines.join('\n')}\n`)
      lines = []
    }
  }
  await handle.write(`${lines.join('\n')}\n`)
  await handle.close()
  return file
}

async function measureReading(files: readonly string[]) {
  const from = performance.now()
  const cpu = process.cpuUsage()
  let rows = 0
  let faults = 0
  let bytes = 0
  for (const file of files) {
    const read = await readWeatherCsv(createReadStream(file), setting)
    rows += read.records
    faults += read.faults.count
    bytes += (await stat(file)).size
  }
  const { user, system } = process.cpuUsage(cpu)
  return { rows, faults, megabytes: Math.round(bytes / 1e6), seconds: seconds(from), cpuSeconds: (user + system) / 1e6 }
}

async function measureKeeping(folder: string, files: readonly string[]) {
  const { guide } = await loadGuide('trees', new Date().toISOString().slice(0, 10))
  if (guide === null) throw new Error('The guide has errors. Run frondline proof.')
  const store = await openStore({ home: folder, databaseUrl: process.env['DATABASE_URL'] ?? null })
  const room: WeatherRoom = { db: store.db, now: () => new Date() }
  try {
    const from = performance.now()
    let rows = 0
    for (const [at, file] of files.entries()) {
      const id = `bench-${at}`
      await addWeatherStation(room, { id, name: id, district: 'holt-fen', latitude: 52, longitude: 0, clockMinutes: 0 })
      const station = await weatherStationByName(store.db, id)
      if (station === undefined) throw new Error(`The station ${id} was not kept.`)
      rows += (await keepWeather(room, station, { origin: file, open: () => createReadStream(file) })).kept
    }
    const whole = seconds(from)
    const first = performance.now()
    await weatherNow(room, guide, 'holt-fen', LAST_DAY)
    const firstMs = performance.now() - first
    const anew: number[] = []
    for (let page = 0; page < PAGES; page++) {
      // Another hash stands for another guide, so nothing that was kept fits.
      const start = performance.now()
      await weatherNow(room, { problems: guide.problems, hash: String(page) }, 'holt-fen', LAST_DAY)
      anew.push(performance.now() - start)
    }
    const unchanged = performance.now()
    await weatherNow(room, guide, 'holt-fen', LAST_DAY)
    return { rows, seconds: whole, firstMs, anewMs: anew.sort((a, b) => a - b)[PAGES / 2] ?? 0, unchangedMs: performance.now() - unchanged }
  } finally {
    await store.close()
  }
}
