import type { Speech } from './languages/speech.js'
import type { Token } from './tokens.js'

/** The parts of a plant that words name, each by the one name of its kind. */
export function partsIn({ singular, answers: { parts } }: Speech, tokens: readonly Token[]): ReadonlySet<string> {
  return new Set(tokens.flatMap(({ text }) => parts.get(singular(text)) ?? []))
}
