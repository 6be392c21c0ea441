import { describe, expect, it } from 'vitest'
import { celsiusOf, hoursByDay, type HourlyRecord, scabHours, wetSpells } from '../../../src/season/index.js'

/** Light from 5 to 21 o'clock on every day. */
const LONG_DAY = () => ({ sunrise: 5, sunset: 21 })

const wet = (hours: number): string => 'w'.repeat(hours)
const dry = (hours: number): string => '.'.repeat(hours)

/** Hours from a time on, all at one temperature: 'w' wet, '.' dry, '?' nothing known; then dry ones until the spell is over. */
function spell(from: string, pattern: string, fahrenheit: number, daylight: Parameters<typeof wetSpells>[3] = LONG_DAY) {
  const start = Date.parse(`${from}:00:00Z`)
  const hours = [...pattern, ...dry(8)].flatMap((mark, step): HourlyRecord[] => (mark === '?' ? [] : [{
    hour: new Date(start + step * 3_600_000).toISOString().slice(0, 13), temperatureC: celsiusOf(fahrenheit), humidityPct: null, rainMm: null,
    wetMinutes: mark === 'w' ? 60 : 0,
  }]))
  return wetSpells(hoursByDay(hours), from.slice(0, 10), '2026-05-12', daylight)
}

describe('apple scab against the revised table', () => {
  // West Virginia University (www.cafcs.wvu.edu/kearneysville/disease_month/millstable.html), from MacHardy & Gadoury 1989,
  // Phytopathology 79:304-310, and Gadoury, Seem, Stensvand & Falk 1998: fewest hours of wet leaves, by °F.
  it.each([
    [34, 41], [36, 35], [37, 30], [39, 28], [41, 21], [43, 18], [45, 15], [46, 13], [48, 12], [50, 11], [52, 9], [54, 8], [55, 8],
    [57, 7], [59, 7], [61, 6], [63, 6], [66, 6], [68, 6], [70, 6], [72, 6], [75, 6], [77, 8], [79, 11],
  ])('needs at %i °F %i hours', (fahrenheit, hours) => {
    expect(scabHours(celsiusOf(fahrenheit))).toBe(hours)
  })

  it('does not infect outside the table', () => {
    expect([scabHours(celsiusOf(32)), scabHours(celsiusOf(82))]).toEqual([null, null])
  })

  it.each([
    ['6 h at 65 °F', wet(6), 65, true], ['5 h at 65 °F', wet(5), 65, false], ['10 h at 50 °F', wet(10), 50, false], ['11 h at 50 °F', wet(11), 50, true],
    ['4 h wet, 7 h dry, 4 h wet at 61 °F', wet(4) + dry(7) + wet(4), 61, true],
  ])('infects, or does not, in %s', (_, pattern, fahrenheit, infects) => {
    expect(spell('2026-05-10T06', pattern, fahrenheit).map((one) => one.infects)).toEqual([infects])
  })

  // Same page: wet spells are joined unless the dry gap is 8 hours or more.
  it('takes spells with 8 dry hours between as two', () => {
    const spells = spell('2026-05-10T05', wet(4) + dry(8) + wet(4), 61)
    expect(spells.map(({ wetHours, infects }) => ({ wetHours, infects }))).toEqual([{ wetHours: 4, infects: false }, { wetHours: 4, infects: false }])
  })

  // Same page: wetness that begins after sunset counts from sunrise; the paper says that rain by night counts from seven.
  it('counts from sunrise what begins by night', () => {
    expect(spell('2026-05-10T22', wet(12), 65)).toMatchObject([{ from: '2026-05-10T22', to: '2026-05-11T09', wetHours: 5, infects: false }])
    expect(spell('2026-05-10T22', wet(13), 65)).toMatchObject([{ wetHours: 6, infects: true }])
    expect(spell('2026-05-11T02', wet(6), 65)).toMatchObject([{ wetHours: 3, infects: false }])
    expect(spell('2026-05-10T20', wet(6), 65)).toMatchObject([{ wetHours: 6, infects: true }])
  })

  it('counts every hour where the sun does not set', () => {
    expect(spell('2026-05-10T22', wet(6), 65, () => null)).toMatchObject([{ wetHours: 6, infects: true }])
  })

  it('leaves open what missing hours could have made an infection, and only that', () => {
    expect(spell('2026-05-10T06', `${wet(4)}??${wet(1)}`, 65)).toMatchObject([{ wetHours: 5, infects: null }])
    expect(spell('2026-05-10T06', `${wet(4)}??${wet(2)}`, 65)).toMatchObject([{ wetHours: 6, infects: true }])
    expect(spell('2026-05-10T06', wet(5), 65)).toMatchObject([{ wetHours: 5, infects: false }])
  })
})
