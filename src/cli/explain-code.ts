import { closestNames, errorCodes, suggest } from '../guide/index.js'

/** What a code of `proof` means, or null when there is no such code. */
export function explain(code: string): string | null {
  const entry = Object.entries(errorCodes).find(([name]) => name === code.toUpperCase())
  return entry === undefined ? null : `${entry[0]}: ${entry[1]}`
}

/** ' Did you mean …?' for a code that does not exist, or an empty string. */
export function closest(code: string): string {
  const text = suggest(closestNames(code.toUpperCase(), Object.keys(errorCodes)))
  return text === '' ? '' : ` ${text}`
}
