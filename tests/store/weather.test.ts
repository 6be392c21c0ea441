import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  beginWeatherRead, endWeatherRead, forgetEmptyWeatherReads, insertWeatherStation, keepWeatherDays, keepWeatherHours, lastWeatherReads, lastWeatherRecords, openStore, type Store,
  weatherDays, weatherHours, weatherHoursAsDays, weatherStationByName, weatherStationsOf, weatherVersion,
} from '../../src/store/index.js'
import { dropTestStore, testStore } from './test-store.js'

const NOON = new Date('2026-07-01T12:00:00.000Z')
const AT = NOON.toISOString()
const row = (name: string, district = 'holt-fen') => ({ name, title: name, district, latitude: 52.4, longitude: -0.1, clock_minutes: 0 })
const hour = (time: string, temperature: number | null, rain: number | null = null) => (
  { hour: time, temperature_c: temperature, humidity_pct: null, rain_mm: rain, wet_minutes: null }
)

let home: string
let store: Store
let school: number
let mill: number

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-weather-'))
  store = await openStore(await testStore(home))
  await insertWeatherStation(store.db, row('school'))
  await insertWeatherStation(store.db, row('mill', 'eastmere'))
  school = (await weatherStationByName(store.db, 'school'))?.id ?? 0
  mill = (await weatherStationByName(store.db, 'mill'))?.id ?? 0
})

afterEach(async () => {
  await store.close()
  await dropTestStore(home)
  await rm(home, { recursive: true, force: true })
})

const read = async (station: number, origin: string) => {
  const id = await beginWeatherRead(store.db, station, origin, AT)
  await endWeatherRead(store.db, id, { outcome: 'kept', kept: 1, faults: 0, why: null, ended_at: AT })
  return id
}

describe('weather stations in the store', () => {
  it('have one name each, and belong to a district', async () => {
    expect(await insertWeatherStation(store.db, row('school', 'eastmere'))).toBe(false)
    expect(await weatherStationsOf(store.db, 'holt-fen')).toMatchObject([{ name: 'school', latitude: 52.4, longitude: -0.1 }])
    expect(await weatherStationByName(store.db, 'nowhere')).toBeUndefined()
  })
})

describe('weather records in the store', () => {
  it('come back by station and day, in order', async () => {
    await keepWeatherDays(store.db, school, 1, [{ day: '2026-06-02', min_c: 1.5, max_c: 2, rain_mm: null }, { day: '2026-06-01', min_c: 3, max_c: 4, rain_mm: 0 }])
    await keepWeatherDays(store.db, mill, 1, [{ day: '2026-06-01', min_c: 9, max_c: 9, rain_mm: 9 }])
    expect(await weatherDays(store.db, school, '2026-06-01', '2026-06-02')).toEqual([
      { day: '2026-06-01', min_c: 3, max_c: 4, rain_mm: 0 }, { day: '2026-06-02', min_c: 1.5, max_c: 2, rain_mm: null },
    ])
    expect(await weatherDays(store.db, school, '2026-06-02', '2026-06-02')).toHaveLength(1)
  })

  it('are the same when they are kept again, and a missing value takes no old one away', async () => {
    const days = [{ day: '2026-06-01', min_c: 3, max_c: 4, rain_mm: null }]
    for (let time = 0; time < 2; time++) await keepWeatherDays(store.db, school, 1, days)
    await keepWeatherDays(store.db, school, 2, [{ day: '2026-06-01', min_c: null, max_c: 5, rain_mm: 0 }])
    expect(await weatherDays(store.db, school, '2026-06-01', '2026-06-01')).toEqual([{ day: '2026-06-01', min_c: 3, max_c: 5, rain_mm: 0 }])
    await keepWeatherHours(store.db, school, 1, [hour('2026-06-01T05', 10)])
    await keepWeatherHours(store.db, school, 2, [hour('2026-06-01T05', null, 2)])
    expect(await weatherHours(store.db, school, '2026-06-01', '2026-06-01')).toEqual([hour('2026-06-01T05', 10, 2)])
  })

  it('sum up hours by day, with how many of them have each value', async () => {
    await keepWeatherHours(store.db, school, 1, [hour('2026-06-01T00', 10, 1), hour('2026-06-01T23', 4, null), hour('2026-06-02T00', 7, 2)])
    expect(await weatherHoursAsDays(store.db, school, '2026-06-01', '2026-06-01')).toEqual([
      { day: '2026-06-01', min_c: 4, max_c: 10, rain_mm: 1, temperatures: 2, rains: 1 },
    ])
  })

  it('say when a station recorded last', async () => {
    expect(await lastWeatherRecords(store.db, school)).toEqual({ day: null, hour: null })
    await keepWeatherHours(store.db, school, 1, [hour('2026-06-01T05', 10), hour('2026-06-01T04', 10)])
    expect(await lastWeatherRecords(store.db, school)).toEqual({ day: null, hour: '2026-06-01T05' })
  })
})

describe('readings of weather files', () => {
  it('show the last one of each station and origin', async () => {
    await read(school, 'june.csv')
    const again = await read(school, 'june.csv')
    const other = await read(school, 'may.csv')
    const mills = await read(mill, 'june.csv')
    expect((await lastWeatherReads(store.db)).map(({ id }) => id)).toEqual([mills, other, again])
  })

  it('are forgotten after a time when they brought nothing', async () => {
    const kept = await read(school, 'june.csv')
    const failed = await beginWeatherRead(store.db, school, 'gone.csv', AT)
    await endWeatherRead(store.db, failed, { outcome: 'failed', kept: 0, faults: 0, why: 'gone', ended_at: AT })
    await beginWeatherRead(store.db, school, 'still.csv', AT)
    await forgetEmptyWeatherReads(store.db, AT)
    expect(await lastWeatherReads(store.db)).toHaveLength(3)
    await forgetEmptyWeatherReads(store.db, new Date(NOON.getTime() + 1).toISOString())
    expect((await lastWeatherReads(store.db)).map(({ origin }) => origin)).toEqual(['still.csv', 'june.csv'])
    expect((await lastWeatherReads(store.db)).map(({ id }) => id)).toContain(kept)
  })

  it('change the version of their station\'s records and of no other', async () => {
    const before = await weatherVersion(store.db, school, NOON)
    const others = await weatherVersion(store.db, mill, NOON)
    await read(school, 'june.csv')
    expect(await weatherVersion(store.db, school, NOON)).not.toBe(before)
    expect(await weatherVersion(store.db, mill, NOON)).toBe(others)
  })

  it('have no version while one goes on, until it must have been broken off', async () => {
    const first = await beginWeatherRead(store.db, school, 'june.csv', AT)
    expect(await weatherVersion(store.db, school, NOON)).toBeNull()
    const hourLater = new Date(NOON.getTime() + 3_600_000)
    const broken = await weatherVersion(store.db, school, hourLater)
    expect(broken).not.toBeNull()
    await read(school, 'may.csv')
    await endWeatherRead(store.db, first, { outcome: 'kept', kept: 1, faults: 0, why: null, ended_at: hourLater.toISOString() })
    expect(await weatherVersion(store.db, school, hourLater)).not.toBe(broken)
  })
})
