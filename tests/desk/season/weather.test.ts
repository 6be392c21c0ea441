import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addWeatherStation, keepWeather, listWeatherStations, weatherNow, type WeatherRoom } from '../../../src/desk/index.js'
import { BATCH, MOST_FAULTS, readWeatherCsv } from '../../../src/desk/season/read-weather-csv.js'
import { weatherMoves } from '../../../src/season/index.js'
import { weatherDays, weatherStationByName, type WeatherStationRow } from '../../../src/store/index.js'
import { openWorld, type World } from '../desk-world.js'

const bytes = (text: string): Uint8Array[] => [new TextEncoder().encode(text)]
const file = (text: string, origin = 'june.csv') => ({ origin, open: () => bytes(text) })
const SETTING = { clockMinutes: 0, latest: '2026-07-01' }

let world: World
let room: WeatherRoom
let station: WeatherStationRow

beforeEach(async () => {
  world = await openWorld()
  world.now = new Date('2026-07-01T12:00:00.000Z')
  room = { db: world.store.db, now: () => world.now }
  await addWeatherStation(room, { id: 'school', name: 'Holt Fen School', district: 'holt-fen', latitude: 52.4, longitude: 0, clockMinutes: 0 })
  const row = await weatherStationByName(room.db, 'school')
  if (row === undefined) throw new Error('the station was not kept')
  station = row
})
afterEach(() => world.close())

describe('reading a weather file', () => {
  it('takes a mark of byte order, quotes, both ends of line and pieces cut anywhere', async () => {
    const text = '\uFEFFdate,"rain_mm"\r\n2026-06-01,"1.5"\n2026-06-02,2\n\n'
    const pieces = [...new TextEncoder().encode(text)].map((byte) => Uint8Array.of(byte))
    const records: unknown[] = []
    expect(await readWeatherCsv(pieces, SETTING, async (batch) => void records.push(...batch.records))).toEqual({ kind: 'daily', records: 2, faults: { first: [], count: 0 } })
    expect(records).toEqual([{ date: '2026-06-01', minC: null, maxC: null, rainMm: 1.5 }, { date: '2026-06-02', minC: null, maxC: null, rainMm: 2 }])
  })

  it('hands records on in batches', async () => {
    const hours = Array.from({ length: BATCH + 1 }, (_, step) => `${new Date(Date.UTC(2026, 0, 1, step)).toISOString().slice(0, 16)},5`)
    const sizes: number[] = []
    await readWeatherCsv(bytes(['time,temperature_c', ...hours].join('\n')), SETTING, async ({ records }) => void sizes.push(records.length))
    expect(sizes).toEqual([BATCH, 1])
  })

  it('counts every fault and tells the first fifty', async () => {
    const { faults } = await readWeatherCsv(bytes(`date,rain_mm\n${'x,1\n'.repeat(60)}`), SETTING)
    expect(faults.count).toBe(60)
    expect(faults.first.map(({ line }) => line)).toEqual(Array.from({ length: MOST_FAULTS }, (_, at) => at + 2))
  })

  it.each([
    ['', 'The file is empty'], ['date,rain_mm\n2026-06-01,1\n2026-06-02,"2\n2026-06-03,3\n', 'From here on the file cannot be read as CSV'],
    [`date,rain_mm\n${'9'.repeat(20_000)}`, 'From here on the file cannot be read as CSV'],
  ])('says where it cannot be read: %#', async (text, message) => {
    const { faults } = await readWeatherCsv(bytes(text), SETTING)
    expect(faults.first[0]?.message).toContain(message)
  })

  it('passes on a fault of the source', async () => {
    async function* broken() {
      yield* bytes('date,rain_mm\n')
      await Promise.resolve()
      throw new Error('the disk is gone')
    }
    await expect(readWeatherCsv(broken(), SETTING)).rejects.toThrow('the disk is gone')
  })
})

describe('keeping a weather file', () => {
  const kept = () => weatherDays(room.db, station.id, '2026-01-01', '2026-12-31')
  const FAULTY = 'date,rain_mm\n2026-06-01,1\n2026-06-02,much\n'

  it('keeps nothing of one with faults, and notes why', async () => {
    expect(await keepWeather(room, station, file(FAULTY))).toMatchObject({ isRefused: true, kept: 0, faults: { count: 1 } })
    expect(await kept()).toEqual([])
    const [state] = await listWeatherStations(room)
    expect(state?.reads).toMatchObject([{ origin: 'june.csv', outcome: 'refused', kept: 0, faults: 1, why: expect.stringContaining('line 3: "much" does not fit') as string }])
  })

  it('leaves faulty lines out when told to, but never goes by a faulty first line', async () => {
    expect(await keepWeather(room, station, file(FAULTY), true)).toMatchObject({ isRefused: false, kept: 1 })
    expect(await kept()).toMatchObject([{ day: '2026-06-01', rain_mm: 1 }])
    expect(await keepWeather(room, station, file('date,rain\n2026-06-03,1\n'), true)).toMatchObject({ isRefused: true, kind: null })
    expect(await kept()).toHaveLength(1)
  })

  it('notes what broke off', async () => {
    const gone = { origin: 'gone.csv', open: () => { throw new Error('the disk is gone') } }
    await expect(keepWeather(room, station, gone)).rejects.toThrow('the disk is gone')
    expect((await listWeatherStations(room))[0]?.reads).toMatchObject([{ outcome: 'failed', why: 'the disk is gone' }])
  })

  it('shows how fresh a station is and what is missing', async () => {
    await keepWeather(room, station, file('date,temperature_min_c,temperature_max_c,rain_mm\n2026-06-29,10,20,1\n2026-06-30,10,20,\n'))
    const [state] = await listWeatherStations(room)
    expect(state).toMatchObject({ station: { id: 'school' }, last: { day: '2026-06-30', hour: null } })
    expect(state?.missing.temperatureDays).toHaveLength(28)
    expect(state?.missing.rainDays).toHaveLength(29)
  })
})

describe('the weather of a district now', () => {
  const AS_OF = '2026-07-01'

  it('is none where there is no station, and says nothing where nothing was recorded', async () => {
    expect(await weatherNow(room, world.guide, 'eastmere', AS_OF)).toBeNull()
    const empty = await weatherNow(room, world.guide, 'holt-fen', AS_OF)
    expect(empty).toMatchObject({ lastRecorded: null, rain: { week: { sumMm: 0, missingDays: { length: 7 } } } })
    if (empty !== null) expect(world.guide.problems.flatMap((problem) => weatherMoves(problem, empty))).toEqual([])
  })

  it('follows new records at once, also those that another process read', async () => {
    const rain = async () => (await weatherNow(room, world.guide, 'holt-fen', AS_OF))?.rain.week.sumMm
    await keepWeather(room, station, file('date,rain_mm\n2026-06-30,1\n'))
    expect(await rain()).toBe(1)
    expect(await weatherNow(room, world.guide, 'holt-fen', AS_OF)).toBe(await weatherNow(room, world.guide, 'holt-fen', AS_OF))
    await keepWeather({ db: world.store.db, now: () => world.now }, station, file('date,rain_mm\n2026-06-30,7\n'))
    expect(await rain()).toBe(7)
  })

  it('goes by the station of the district that recorded last', async () => {
    await addWeatherStation(room, { id: 'mill', name: 'Fen Mill', district: 'holt-fen', latitude: 52.4, longitude: 0, clockMinutes: 0 })
    await keepWeather(room, station, file('date,rain_mm\n2026-06-29,1\n'))
    const mill = await weatherStationByName(room.db, 'mill')
    if (mill === undefined) throw new Error('the mill was not kept')
    expect((await weatherNow(room, world.guide, 'holt-fen', AS_OF))?.station.id).toBe('school')
    await keepWeather(room, mill, file('time,rain_mm\n2026-06-30T05:00,1\n'))
    expect((await weatherNow(room, world.guide, 'holt-fen', AS_OF))?.station.id).toBe('mill')
  })

  it('takes days from hours back to the start of the year', async () => {
    const hours = Array.from({ length: 24 }, (_, hour) => `2026-01-02T${String(hour).padStart(2, '0')}:00,${hour < 12 ? 10 : 20}`)
    await keepWeather(room, station, file(['time,temperature_c', ...hours].join('\n')))
    const found = await weatherNow(room, world.guide, 'holt-fen', AS_OF)
    expect(found?.degreeDays[0]).toMatchObject({ since: '2026-01-01', sum: 5 })
    expect(found?.fromHours).toEqual(['2026-01-02'])
  })
})
