import type { Desk } from '../desk/index.js'
import type { ScheduledDuty } from './duties.js'
import type { WeatherSettings } from './weather-settings.js'

const MINUTE_MS = 60_000

/** What the service does by itself, and how often. */
export function dutiesOf(
  desk: Pick<Desk, 'eraseDueContacts' | 'sweepPictures' | 'forgetOldMail' | 'pullWeather'>, weather: WeatherSettings | null,
): readonly ScheduledDuty[] {
  return [
    { name: 'erase contacts', everyMs: 60 * MINUTE_MS, run: async () => { await desk.eraseDueContacts() } },
    // Two duties, so that a bucket that does not answer keeps no letter longer than it should be.
    { name: 'sweep pictures', everyMs: 15 * MINUTE_MS, run: async () => { await desk.sweepPictures() } },
    { name: 'forget old mail', everyMs: 15 * MINUTE_MS, run: async () => { await desk.forgetOldMail() } },
    ...(weather === null ? [] : [
      { name: 'pull weather', everyMs: weather.everyMinutes * MINUTE_MS, run: () => desk.pullWeather(weather.addresses) },
    ]),
  ]
}
