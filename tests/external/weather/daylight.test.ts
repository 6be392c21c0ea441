import { describe, expect, it } from 'vitest'
import { daylightAt } from '../../../src/season/index.js'

describe('sunrise and sunset', () => {
  // At the equator day and night are of one length all year: with refraction and the sun's width light lasts 12 h 7 min
  // (United States Naval Observatory, "Equinoxes: length of day"; from memory).
  it.each(['2026-03-20', '2026-06-21', '2026-12-21'])('stand 12 hours and some 7 minutes apart at the equator on %s', (date) => {
    const light = daylightAt({ latitude: 0, longitude: 0, clockMinutes: 0 })(date)
    expect((light?.sunset ?? 0) - (light?.sunrise ?? 0)).toBeCloseTo(12 + 7 / 60, 1)
  })

  // Greenwich at midsummer: sunrise 03:43, sunset 20:21 UTC (almanacs; from memory), give or take some minutes over the years.
  it('are those of an almanac, by the station\'s own clock', () => {
    const utc = daylightAt({ latitude: 51.48, longitude: 0, clockMinutes: 0 })('2026-06-21')
    expect(Math.abs((utc?.sunrise ?? 0) * 60 - (3 * 60 + 43))).toBeLessThan(4)
    expect(Math.abs((utc?.sunset ?? 0) * 60 - (20 * 60 + 21))).toBeLessThan(4)
    const ahead = daylightAt({ latitude: 51.48, longitude: 0, clockMinutes: 60 })('2026-06-21')
    expect((ahead?.sunrise ?? 0) - (utc?.sunrise ?? 0)).toBeCloseTo(1, 1)
  })

  it('are neither where the sun stays up', () => {
    expect(daylightAt({ latitude: 70, longitude: 25, clockMinutes: 60 })('2026-06-21')).toBeNull()
  })
})
