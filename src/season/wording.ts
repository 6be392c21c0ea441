import type { MoveReason } from './move.js'
import type { MoveWording } from './move-wording.js'
import { en } from './wording-en.js'
import { es } from './wording-es.js'

const wordings: Readonly<Record<string, MoveWording>> = { en, es }

/** A reason in words: '3 reports in Holt Fen this week'. A code without words is said as it is. */
export function reasonInWords({ code, values }: MoveReason, language = 'en'): string {
  const { reasons, weather } = wordingIn(language)
  return reasons[code]?.(values) ?? weather[code]?.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? '')) ?? code
}

/** The whole line: 'more likely here now: 3 reports in Holt Fen this week, and two days of blight weather'. */
export function moveInWords(isMoreLikely: boolean, reasons: readonly MoveReason[], language = 'en'): string {
  const { line, lastAnd } = wordingIn(language)
  const parts = reasons.map((reason) => reasonInWords(reason, language))
  const last = parts.at(-1) ?? ''
  return line(isMoreLikely, parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')}${lastAnd}${last}`)
}

/** English for a language that has no words of its own here. */
function wordingIn(language: string): MoveWording {
  return wordings[language] ?? en
}
