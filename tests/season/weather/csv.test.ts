import { describe, expect, it } from 'vitest'
import { type CsvFault, hourOfTime, isDate, readHeader, rowReader } from '../../../src/season/index.js'

const LATEST = '2026-07-01'

/** Records and faults of a file given as lines of fields. */
function read(lines: readonly string[], clockMinutes = 0) {
  const [first = '', ...others] = lines
  const faults: CsvFault[] = []
  const header = readHeader(first.split(','))
  if ('faults' in header) return { records: [], faults: header.faults }
  const reader = rowReader(header, { clockMinutes, latest: LATEST, report: (fault) => faults.push(fault) })
  const records = others.map((line, at) => reader.read(line.split(','), at + 2)).filter((record) => record !== null)
  return { records, faults }
}

describe('the first line of a weather file', () => {
  it('says whether it holds days or hours, in which units and in any order', () => {
    expect(readHeader(['rain_in', ' Date ', 'TEMPERATURE_MIN_F'])).toMatchObject({ kind: 'daily', when: 1, width: 3, columns: [{ measure: 'rainMm', at: 0 }, { measure: 'minC', at: 2 }] })
    expect(readHeader(['time', 'humidity_pct'])).toMatchObject({ kind: 'hourly', columns: [{ measure: 'humidityPct', at: 1 }] })
  })

  it('is refused with the place of every column that is none, and the nearest name', () => {
    expect(read(['time,temperature,humidity_pct,wind'])).toEqual({ records: [], faults: [
      { line: 1, field: { number: 2, name: 'temperature' }, message: expect.stringContaining('Did you mean "temperature_c"?') as string },
      { line: 1, field: { number: 4, name: 'wind' }, message: expect.stringContaining('Take other columns out.') as string },
    ] })
  })

  it.each([
    ['day,rain_mm', 'has neither "date" nor "time"'], ['date,time,rain_mm', 'has both'], ['date', 'There is nothing but "date"'],
    ['date,rain_mm,rain_in', 'says the same as "rain_mm"'], ['date,date,rain_mm', 'stands twice'],
  ])('is refused when it is %s', (line, message) => {
    expect(read([line]).faults[0]?.message).toContain(message)
  })
})

describe('the lines of a weather file', () => {
  it('are brought into our units, with nothing where nothing stands', () => {
    expect(read(['date,temperature_min_f,temperature_max_f,rain_in', '2026-06-01,50,68,1', '2026-06-02,,,0', '2026-06-03,,,'])).toEqual({ faults: [], records: [
      { date: '2026-06-01', minC: 10, maxC: 20, rainMm: 25.4 }, { date: '2026-06-02', minC: null, maxC: null, rainMm: 0 },
    ] })
    expect(read(['time,temperature_c,wet_hours', '2026-06-01T05:00,-1.5,0.5'])).toEqual({ faults: [], records: [
      { hour: '2026-06-01T05', temperatureC: -1.5, humidityPct: null, rainMm: null, wetMinutes: 30 },
    ] })
  })

  it('have all their faults told, each with its line, field and what was expected', () => {
    const { records, faults } = read([
      'time,temperature_c,humidity_pct', '2026-06-01T05:00,99,101', '2026-06-01T05:30,10,80', '2026-06-01T06:00,10', '2026-06-01T07:00,10,5,80',
      '2026-06-01T08:00,ten,80', '2026-06-01T09:00,10,80', '2026-06-01 09:00,11,80', '2026-08-01T00:00,10,80', '',
    ])
    expect(records).toHaveLength(1)
    expect(faults.map(({ line, field }) => [line, field?.number ?? null])).toEqual([[2, 2], [2, 3], [3, 1], [4, null], [5, null], [6, 2], [8, 1], [9, 1]])
    expect(faults[0]?.message).toBe('"99" does not fit. Expected a number from -60 to 60 (°C) with a decimal point, or nothing where it is missing.')
    expect(faults[3]?.message).toBe('The line has 2 fields. Expected 3, as in the first line.')
    expect(faults[6]?.message).toBe('"2026-06-01 09:00" stands on line 7 already. Expected each hour once.')
    expect(faults[7]?.message).toContain('lies in the future')
  })

  it('are refused when the lowest temperature is above the highest', () => {
    expect(read(['date,temperature_min_c,temperature_max_c', '2026-06-01,20,10']).faults[0]?.message).toContain('The lowest temperature is above the highest')
  })
})

describe('times of weather files', () => {
  it.each([
    ['2026-06-01T05:00', 60, '2026-06-01T05'], ['2026-06-01 05:00:00', 60, '2026-06-01T05'], ['2026-06-01T05:00Z', 60, '2026-06-01T06'],
    ['2026-06-01T00:00+02:00', 60, '2026-05-31T23'], ['2026-06-01T05:30Z', 330, '2026-06-01T11'],
    ['2026-06-01T05:00Z', 330, null], ['2026-06-01T05:10', 0, null], ['2026-06-01T24:00', 0, null], ['2026-02-30T05:00', 0, null], ['2026-06-01', 0, null],
    ['2026-06-01T0x:00', 0, null], ['01.06.2026 05:00', 0, null],
  ])('%s by a clock %i minutes ahead begins the hour %s', (text, clock, hour) => {
    expect(hourOfTime(text, clock)).toBe(hour)
  })

  it('know the calendar', () => {
    expect(['2024-02-29', '2000-02-29', '2026-12-31'].map(isDate)).toEqual([true, true, true])
    expect(['2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-06-31', '2026-6-1', '20260601'].map(isDate)).toEqual(new Array(7).fill(false))
  })
})
