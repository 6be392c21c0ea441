import type { GuideError } from './guide-error.js'
import { lineAndColumn, type Place } from './source-file.js'

/** One guide error as an author reads it: place, code, sentence, and the line with a caret under the words at fault. */
export function printGuideError(error: GuideError): string {
  const [first, ...others] = error.at
  const { line, column } = lineAndColumn(first)
  const suggestion = suggest(error.nearest)
  const parts = [
    `${first.file.path}:${line}:${column}  ${error.severity} ${error.code}`,
    `  ${error.message}${suggestion ? ` ${suggestion}` : ''}`,
    excerpt(first, line, column),
  ]
  for (const other of others) {
    const place = lineAndColumn(other)
    parts.push(`  see also ${other.file.path}:${place.line}:${place.column}`)
  }
  return parts.filter((part) => part !== '').join('\n')
}

/** One guide error as a plain value for `--json`. */
export function guideErrorAsJson(error: GuideError) {
  const places = error.at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))
  return { severity: error.severity, code: error.code, message: error.message, nearest: error.nearest, ...places[0], alsoAt: places.slice(1) }
}

/** 'Did you mean "a" or "b"?', or an empty string. */
export function suggest(nearest: readonly string[]): string {
  if (nearest.length === 0) return ''
  return `Did you mean ${nearest.map((name) => `"${name}"`).join(' or ')}?`
}

function excerpt(place: Place, line: number, column: number): string {
  const lines = place.file.text.split('\n')
  const shown: string[] = []
  const width = String(line).length
  for (const number of [line - 1, line]) {
    const text = lines[number - 1]
    if (text === undefined || number < 1) continue
    shown.push(`  ${String(number).padStart(width)} | ${text.replace(/\r$/, '').slice(0, 160)}`)
  }
  const lineText = (lines[line - 1] ?? '').replace(/\r$/, '')
  const length = Math.max(1, Math.min(place.end - place.start, lineText.length - column + 1))
  if (column <= 160) shown.push(`  ${' '.repeat(width)} | ${' '.repeat(column - 1)}${'^'.repeat(Math.min(length, 160))}`)
  return shown.join('\n')
}
