import { slipsBetween } from './edit-distance.js'
import { slipsAllowed, WEIGHTS } from './score.js'

export interface Respelling {
  readonly word: string
  readonly slips: number
}

/** Finds the known words that a misspelled one may stand for, fewest slips first, at most three. */
export interface Speller {
  (written: string): readonly Respelling[]
}

/**
 * A speller over a list of known words. Words that share letter triples with the written one are looked up in an index,
 * and only the nearest are compared letter by letter; what was once looked up is kept, up to a bound. So the cost hardly
 * grows with the list.
 */
export function buildSpeller(known: Iterable<string>): Speller {
  const words = [...new Set(known)].filter((word) => slipsAllowed(word.length) > 0).sort()
  const triples = new Map<string, number[]>()
  for (const [number, word] of words.entries()) {
    for (const triple of new Set(triplesOf(word))) {
      const list = triples.get(triple)
      if (list === undefined) triples.set(triple, [number])
      else list.push(number)
    }
  }
  const kept = new Map<string, readonly Respelling[]>()
  return (written) => {
    if (slipsAllowed(written.length) === 0 || written.length > WEIGHTS.longestRespelled) return []
    const before = kept.get(written)
    if (before !== undefined) return before
    const near = nearest(words, triples, written)
    if (kept.size >= MOST_KEPT) kept.clear()
    kept.set(written, near)
    return near
  }
}

function nearest(words: readonly string[], triples: ReadonlyMap<string, readonly number[]>, written: string): readonly Respelling[] {
  const shared = new Map<number, number>()
  const own = new Set(triplesOf(written))
  for (const triple of own) for (const number of triples.get(triple) ?? []) shared.set(number, (shared.get(number) ?? 0) + 1)
  // A slip spoils at most three triples, a swap four; what is left must be shared.
  const least = Math.max(1, own.size - 4 * slipsAllowed(written.length))
  const shortlist = [...shared]
    .filter(([, count]) => count >= least)
    .sort((a, b) => b[1] - a[1] || a[0] - b[0])
    .slice(0, MOST_COMPARED)
  const near: Respelling[] = []
  for (const [number] of shortlist) {
    const word = words[number]
    if (word === undefined) continue
    const limit = slipsAllowed(Math.min(word.length, written.length))
    const slips = slipsBetween(written, word, limit)
    // Two slips and another first letter is a different word more often than a misspelling.
    if (slips <= limit && (slips < 2 || word[0] === written[0])) near.push({ word, slips })
  }
  return near.sort((a, b) => a.slips - b.slips || (a.word < b.word ? -1 : 1)).slice(0, 3)
}

/** Letter triples, with the ends marked: `^le`, `lea`, `eaf`, `af$`. */
function triplesOf(word: string): readonly string[] {
  const padded = `^${word}$`
  return Array.from({ length: padded.length - 2 }, (_, at) => padded.slice(at, at + 3))
}

const MOST_COMPARED = 48
const MOST_KEPT = 4096
