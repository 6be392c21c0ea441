import { Readable } from 'node:stream'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { addDemonstration, addWeatherStation, keepWeather, type Member, removeDemonstration } from '../../../src/desk/index.js'
import { weatherStations } from '../../../src/store/index.js'
import { openWorld, type World } from '../desk-world.js'
import { concludedCase } from './season-cases.js'

let world: World
let sedge: Member
beforeEach(async () => {
  world = await openWorld()
  sedge = await world.member('sedge', 'specialist')
})
afterEach(() => world.close())

const room = () => ({ db: world.store.db, now: () => world.now, knowledge: () => ({ guide: world.guide }) })

/** Every table that an invented season writes to, as it stands, without the numbers that the store hands out. */
async function written() {
  const { db } = world.store
  return {
    counts: await db.selectFrom('invented_count').selectAll().orderBy('week').orderBy('problem').orderBy('host').orderBy('district').execute(),
    notes: await db.selectFrom('weekly_note').select(['week', 'what', 'note', 'invented', 'at']).orderBy('id').execute(),
    presence: await db.selectFrom('presence_change').select(['problem', 'district', 'state', 'holds_from', 'why', 'invented', 'at']).orderBy('id').execute(),
    stations: await db.selectFrom('weather_station').select(['name', 'title', 'district', 'invented']).orderBy('name').execute(),
    days: await db.selectFrom('weather_day').innerJoin('weather_station', 'weather_station.id', 'station_id').select(['name', 'day', 'min_c', 'max_c', 'weather_day.rain_mm']).orderBy('name').orderBy('day').execute(),
    hours: (await db.selectFrom('weather_hour').innerJoin('weather_station', 'weather_station.id', 'station_id').select(['name', 'hour', 'temperature_c', 'humidity_pct']).orderBy('name').orderBy('hour').execute()),
    reads: await db.selectFrom('weather_read').select('origin').orderBy('id').execute(),
    reports: await db.selectFrom('season_report').selectAll().orderBy('case_id').execute(),
  }
}

describe('an invented season', () => {
  it('fills every part of the season page, marked as invented', async () => {
    const added = await addDemonstration(room())
    expect(added).toMatchObject({ stations: world.guide.region.districts.size })
    expect(added.reports).toBeGreaterThan(1000)
    const season = await world.desk.showSeason({})
    expect(season.invented).toBe(true)
    expect(season.problems.length).toBeGreaterThan(5)
    const { notes } = await world.desk.publicNotes()
    expect(notes.map(({ week, invented }) => [week, invented])).toEqual([['2026-W19', true], ['2026-W18', true], ['2026-W17', true], ['2026-W16', true]])
    expect(notes.flatMap(({ problems }) => problems).length).toBeGreaterThan(0)
    const { presence, stations, hours } = await written()
    expect(presence.every(({ why, invented }) => why.startsWith('Invented for the demonstration') && invented === 1)).toBe(true)
    expect(stations.every(({ title, invented }) => title.endsWith('(invented)') && invented === 1)).toBe(true)
    expect(hours.length).toBeGreaterThan(1000)
    expect((await world.desk.showWeather('holt-fen')).station).toMatchObject({ name: 'Holt Fen school garden (invented)', lastDay: '2026-05-13' })
  })

  it('is the same for the same seed and day, and another for another seed', async () => {
    await addDemonstration(room())
    const first = await written()
    await removeDemonstration(room())
    await addDemonstration(room())
    expect(await written()).toEqual(first)
    await removeDemonstration(room())
    await addDemonstration(room(), 7)
    const other = await written()
    expect(other.counts).not.toEqual(first.counts)
    expect(other.days).not.toEqual(first.days)
  })

  it('is taken away whole, and nothing that is real with it', async () => {
    await concludedCase(world, { host: 'rose', problem: 'rose-black-spot', district: 'holt-fen' })
    await world.desk.setPresence({ problem: 'tomato-late-blight', district: 'eastmere', state: 'present', why: 'Seen.' }, sedge)
    await world.desk.approveNote({ week: '2026-W19', note: { lead: 'A real week.', problems: [] } }, sedge)
    await addWeatherStation(room(), { id: 'mill', name: 'The mill', district: 'holt-fen', latitude: 52.4, longitude: 0, clockMinutes: 0 })
    for (const station of await weatherStations(world.store.db)) {
      await keepWeather(room(), station, { origin: 'may.csv', open: () => Readable.from([Buffer.from('date,rain_mm\n2026-05-01,4\n')]) })
    }
    const before = await written()
    await addDemonstration(room())
    // What people wrote of a week stays what everyone reads of it.
    expect((await world.desk.publicNotes()).notes.find(({ week }) => week === '2026-W19')?.lead).toBe('A real week.')
    expect(await removeDemonstration(room())).toBe(true)
    expect(await written()).toEqual(before)
    expect(await removeDemonstration(room())).toBe(false)
  })

  it('is refused in a real region, beside another, and without a specialist, and leaves nothing behind', async () => {
    const before = await written()
    const real = { ...world.guide, region: { ...world.guide.region, demonstration: false } }
    await expect(addDemonstration({ ...room(), knowledge: () => ({ guide: real }) })).rejects.toThrow(/real region/)
    expect(await written()).toEqual(before)
    await addDemonstration(room())
    const once = await written()
    await expect(addDemonstration(room())).rejects.toThrow('An invented season is there already. Take it away first: frondline season demo remove')
    expect(await written()).toEqual(once)
    const empty = await openWorld()
    try {
      await empty.member('vetch', 'volunteer')
      await expect(addDemonstration({ ...room(), db: empty.store.db })).rejects.toThrow(/no specialist/)
    } finally {
      await empty.close()
    }
  })
})
