import type { Guide, HeatWindow } from '../../guide/index.js'
import type { DegreeDayNeed } from './degree-day-sum.js'
import { lastOccurrence } from './days.js'
import { celsiusOf, fahrenheitDaysOf } from './units.js'

/** A sum of degree days that someone asks for: how, and from which day of the year. */
export interface DatedNeed extends DegreeDayNeed {
  readonly from: { readonly month: number; readonly day: number }
}

/** What every summary reckons, whatever the guide asks: the commonest base of gardens in temperate lands, from New Year. */
export const USUAL_NEED: DatedNeed = { method: 'average', lower: 10, upper: null, from: { month: 1, day: 1 } }

/** What a window needs summed, in °C. */
export function needOf({ unit, base, upper, from, method }: HeatWindow): DatedNeed {
  const celsius = (temperature: number): number => (unit === 'F' ? celsiusOf(temperature) : temperature)
  return { method, lower: celsius(base), upper: upper === null ? null : celsius(upper), from }
}

/** Degree days in the window's own unit. */
export function inUnitOf({ unit }: HeatWindow, celsiusDays: number): number {
  return unit === 'F' ? fahrenheitDaysOf(celsiusDays) : celsiusDays
}

/** Every sum that a guide's problems ask for, each once, after the usual one. */
export function needsOf(guide: Pick<Guide, 'problems'>): DatedNeed[] {
  const needs = [USUAL_NEED, ...guide.problems.flatMap(({ heatWindow }) => (heatWindow === null ? [] : [needOf(heatWindow)]))]
  return [...new Map(needs.map((need) => [keyOf(need), need])).values()]
}

/** One key for one sum. */
export function keyOf({ method, lower, upper, from }: DatedNeed): string {
  return [method, lower.toFixed(4), upper?.toFixed(4) ?? 'none', from.month, from.day].join('|')
}

/** The first day of the longest sum, so that no more is read than needed. */
export function firstDayOf(needs: readonly DatedNeed[], last: string): string {
  return needs.map(({ from }) => lastOccurrence(from, last)).sort()[0] ?? last
}
