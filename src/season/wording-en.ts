import type { MoveReason } from './move.js'
import { reasonWords } from './weather/moves.js'

type Values = MoveReason['values']
type Words = (values: Values) => string

/** English for each reason that presence and reports give; another language is another such table. */
const words: Readonly<Record<string, Words>> = {
  'reports this week': ({ count, district }) => `${reports(count)} in ${district} this week`,
  'reports lately': ({ count, district, weeks }) => `${reports(count)} in ${district} in the last ${weeks} weeks`,
  presence: ({ state, district }) => {
    switch (state) {
      case 'not found': return `not found in ${district} so far`
      case 'found nearby': return `found near ${district}`
      case 'widespread': return `widespread in ${district}`
      default: return `known to be in ${district}`
    }
  },
  'presence beside': ({ district }) => `found in ${district}, next door`,
}

/** A reason in English: 'three reports in Holt Fen this week'. Falls back on the code, which is a word too. */
export function reasonInWords({ code, values }: MoveReason): string {
  return words[code]?.(values) ?? weatherWords(code, values) ?? code
}

function weatherWords(code: string, values: Values): string | null {
  const template = Object.entries(reasonWords).find(([name]) => name === code)?.[1]
  return template?.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? '')) ?? null
}

/** The whole line: 'more likely here now: 3 reports in Holt Fen this week, and two days of blight weather'. */
export function moveInWords(isMoreLikely: boolean, reasons: readonly MoveReason[]): string {
  return `${isMoreLikely ? 'more' : 'less'} likely here now: ${listed(reasons.map(reasonInWords))}`
}

function reports(count: string | number | undefined): string {
  return count === 1 ? '1 report' : `${count ?? 0} reports`
}

function listed(parts: readonly string[]): string {
  const last = parts.at(-1) ?? ''
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')}, and ${last}`
}
