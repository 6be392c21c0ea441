import type { DegreeDayMethod } from '../../guide/index.js'

/** Between which temperatures a pest develops, in the unit of the temperatures. */
export interface Thresholds {
  readonly lower: number
  /** Above it development goes no faster; null where there is no such limit. */
  readonly upper: number | null
}

/**
 * Degree days of one day, in the unit of the temperatures, 0 or more. The upper threshold is a horizontal cutoff:
 * development goes on above it at the rate that it has there. The plain average knows no upper threshold.
 *
 * average: max(0, mean - lower), "method 1" of McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291-300.
 * modified average: both temperatures are first brought between the thresholds, their "method 2".
 * single sine: Baskerville & Emin 1969, Ecology 50:514-517. single triangle, and the cutoff of both: Zalom et al. 1983,
 * Univ. California Leaflet 21373.
 * @throws RangeError when a temperature is no number or the lowest is above the highest
 */
export function degreeDays(method: DegreeDayMethod, min: number, max: number, { lower, upper }: Thresholds): number {
  if (!(min <= max)) throw new RangeError(`The day's lowest temperature is ${min} and its highest ${max}. Expected two numbers, the lowest first.`)
  switch (method) {
    case 'average': return Math.max(0, (min + max) / 2 - lower)
    case 'modified average': {
      const within = (temperature: number): number => Math.min(Math.max(temperature, lower), upper ?? Infinity)
      return Math.max(0, (within(min) + within(max)) / 2 - lower)
    }
    case 'single sine': return cutOff(underSine, min, max, lower, upper)
    case 'single triangle': return cutOff(underTriangle, min, max, lower, upper)
  }
}

type Above = (min: number, max: number, threshold: number) => number

function cutOff(above: Above, min: number, max: number, lower: number, upper: number | null): number {
  const all = above(min, max, lower)
  return Math.max(0, upper === null ? all : all - above(min, max, upper))
}

/** Mean height above the threshold of a sine wave between the day's two temperatures. */
function underSine(min: number, max: number, threshold: number): number {
  const mean = (min + max) / 2
  if (min >= threshold) return mean - threshold
  if (max <= threshold) return 0
  const reach = (max - min) / 2
  const crossing = Math.asin((threshold - mean) / reach)
  return ((mean - threshold) * (Math.PI / 2 - crossing) + reach * Math.cos(crossing)) / Math.PI
}

/** Mean height above the threshold of straight lines between the day's two temperatures. */
function underTriangle(min: number, max: number, threshold: number): number {
  if (min >= threshold) return (min + max) / 2 - threshold
  if (max <= threshold) return 0
  return (max - threshold) ** 2 / (2 * (max - min))
}
