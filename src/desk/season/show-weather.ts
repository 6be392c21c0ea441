import type { DistrictWeather, HeatCurve, StationWeather } from '../../../shared/index.js'
import type { Guide, HeatWindow } from '../../guide/index.js'
import { type DatedSum, fahrenheitDaysOf, keyOf, needOf, type RainSum, USUAL_NEED, type WeatherSummary } from '../../season/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import { weatherNow } from './weather-now.js'

/** The weather of a district as of today, as the season page shows it. */
export async function showWeather(room: Pick<Room, 'db' | 'knowledge' | 'now'>, district: string): Promise<DistrictWeather> {
  const { guide } = room.knowledge()
  const districtName = guide.region.districts.get(district)
  if (districtName === undefined) throw new DeskFault('UNKNOWN_DISTRICT', { words: { district } })
  const on = room.now().toISOString().slice(0, 10)
  const summary = await weatherNow(room, guide, district, on)
  return { district, districtName, on, station: summary === null ? null : stationView(guide, summary) }
}

function stationView(guide: Guide, summary: WeatherSummary): StationWeather {
  const { station, lateBlight: { hutton, smith }, tomatoSeverity, missing } = summary
  return {
    station: station.id, name: station.name, lastDay: summary.lastDay, lastRecorded: summary.lastRecorded,
    rain: {
      week: against(summary.rain.week), month: against(summary.rain.month),
      byDay: summary.rain.month.byDay.map(({ date, mm }) => ({ day: date, mm })),
    },
    heat: summary.degreeDays.flatMap((sum) => curvesOf(guide, sum)),
    lateBlight: { hutton: [...hutton.days], smith: [...smith.days], open: [...hutton.openDays] },
    tomato: { sum: tomatoSeverity.sum, days: tomatoSeverity.days.map(({ date, value }) => ({ day: date, value })), open: [...tomatoSeverity.openDays] },
    scab: summary.wetSpells.map(({ from, to, wetHours, meanC, infects }) => ({ from, to, hours: wetHours, meanC, infects })),
    missing: {
      temperatureDays: [...missing.temperatureDays], rainDays: [...missing.rainDays], hourlessDays: [...missing.hourlessDays],
      partDays: missing.hours.map(({ date, hours }) => ({ day: date, hours: hours.length })),
    },
  }
}

function against({ days, sumMm, needMm, missingDays }: RainSum): StationWeather['rain']['week'] {
  return { days, sumMm, needMm, missing: missingDays.length }
}

/** A sum in each unit in which a problem of the guide asks for it; the usual sum in °C when none does. */
function curvesOf(guide: Guide, sum: DatedSum): HeatCurve[] {
  const key = keyOf(sum.need)
  const events = guide.problems.flatMap(({ id, name, heatWindow }) => (
    heatWindow === null || keyOf(needOf(heatWindow)) !== key ? [] : [{ unit: heatWindow.unit, problem: id, name, least: heatWindow.least, most: heatWindow.most }]))
  const units = new Set<HeatWindow['unit']>(events.map(({ unit }) => unit))
  if (units.size === 0 && key === keyOf(USUAL_NEED)) units.add('C')
  return [...units].map((unit) => {
    const inUnit = (celsiusDays: number): number => (unit === 'F' ? fahrenheitDaysOf(celsiusDays) : celsiusDays)
    return {
      how: howOf(sum, unit), unit, sum: inUnit(sum.sum), missing: sum.missingDays.length,
      points: sum.points.map(({ date, sum: so }) => ({ day: date, sum: inUnit(so) })),
      events: events.filter((event) => event.unit === unit).map(({ problem, name, least, most }) => ({ problem, name, least, most }))
        .sort((a, b) => a.least - b.least || a.name.localeCompare(b.name, 'en')),
    }
  })
}

/** 'above 10 °C from 1 January, average of the day'. */
function howOf({ need, since }: DatedSum, unit: HeatWindow['unit']): string {
  const degrees = (celsius: number): string => `${Math.round((unit === 'F' ? celsius * 1.8 + 32 : celsius) * 10) / 10} °${unit}`
  const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' }).format(new Date(since))
  return `above ${degrees(need.lower)}${need.upper === null ? '' : ` up to ${degrees(need.upper)}`} from ${day}, ${methodWords[need.method]}`
}

const methodWords = {
  'average': 'average of the day', 'modified average': 'modified average', 'single sine': 'single sine', 'single triangle': 'single triangle',
} as const
