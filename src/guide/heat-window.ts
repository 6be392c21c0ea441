import { closestNames } from './closest-names.js'
import { type DegreeDayMethod, degreeDayMethods, type HeatWindow } from './guide.js'

/** Why a window cannot be read, and the nearest words that could. */
export interface HeatFault {
  readonly message: string
  readonly nearest: readonly string[]
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']
const MOST_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

const NUMBER = '(-?\\d+(?:\\.\\d+)?)'
const REST = `degree[- ]days base ${NUMBER} ?°([CF])(?: to ${NUMBER} ?°([CF]))? from (\\d{1,2}) ([A-Za-z]+)(?: by ([a-z ]+))?$`
const FORMS = {
  'seen between': { form: new RegExp(`^${NUMBER} and ${NUMBER} ${REST}`), such: '450 and 900 degree days base 10 °C from 1 March' },
  'seen after': { form: new RegExp(`^${NUMBER}() ${REST}`), such: '450 degree days base 10 °C from 1 March' },
}

/** Reads a window such as "450 and 900 degree days base 10 °C to 30 °C from 1 March by single sine". */
export function readHeatWindow(text: string, key: 'seen between' | 'seen after'): HeatWindow | HeatFault {
  const { form, such } = FORMS[key]
  const parts = form.exec(text.replace(/\s+/g, ' '))
  const wrong = (what: string, nearest: readonly string[] = []): HeatFault => ({ message: `"${key}" is "${text}". ${what}`, nearest })
  if (parts === null) return wrong(`Expected words such as: ${such}. "to 30 °C" may stand after the base and "by single sine" at the end.`)
  const [, least, most, base, unit, upper, upperUnit, day, monthName, methodName = 'average'] = parts
  const month = MONTHS.findIndex((name) => name.toLowerCase() === monthName?.toLowerCase())
  if (month === -1) return wrong(`"${monthName ?? ''}" is no month.`, closestNames(monthName ?? '', MONTHS))
  if (Number(day) < 1 || Number(day) > (MOST_DAYS[month] ?? 0)) return wrong(`Expected a day from 1 to ${MOST_DAYS[month] ?? 0} of ${MONTHS[month] ?? ''}.`)
  const method = degreeDayMethods.find((name) => name === methodName)
  if (method === undefined) return wrong(`"${methodName}" is no way to reckon degree days. Expected one of: ${degreeDayMethods.join(', ')}.`, closestNames(methodName, degreeDayMethods))
  if (Number(least) < 0) return wrong('Degree days are never below 0.')
  if (key === 'seen between' && Number(most) <= Number(least)) return wrong('Expected the smaller number of degree days first.')
  if (upper !== undefined && upperUnit !== unit) return wrong('Expected both thresholds in the same unit.')
  if (upper !== undefined && Number(upper) <= Number(base)) return wrong('Expected the upper threshold above the base.')
  if (upper !== undefined && !knowsUpper(method)) return wrong(`The method "${method}" knows no upper threshold. Expected "by modified average", "by single sine" or "by single triangle" at the end.`)
  return {
    unit: unit === 'F' ? 'F' : 'C', least: Number(least), most: key === 'seen after' ? null : Number(most), base: Number(base),
    upper: upper === undefined ? null : Number(upper), from: { month: month + 1, day: Number(day) }, method,
  }
}

const knowsUpper = (method: DegreeDayMethod): boolean => method !== 'average'
