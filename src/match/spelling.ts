import Fuse from 'fuse.js'
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
 * A speller over a list of known words.
 *
 * fuse.js picks the words that are near, by its bit-parallel search; counting slips then decides, because fuse also
 * takes a word that merely contains the written one, and counts two swapped letters as two faults.
 */
export function buildSpeller(known: Iterable<string>): Speller {
  const words = [...new Set(known)].filter((word) => slipsAllowed(word.length) > 0).sort()
  const alikeAtFront = groupWords(words, front)
  const alikeAtEnd = groupWords(words, end)

  return (written) => {
    if (slipsAllowed(written.length) === 0 || written.length > WEIGHTS.longestRespelled) return []
    // Few people get the first letter wrong, and fewer both ends. Looking only there keeps a lookup under a
    // millisecond; the whole list of a full guide takes ten.
    const near = judge(alikeAtFront.get(front(written)), written)
    return near.length > 0 ? near : judge(alikeAtEnd.get(end(written)), written)
  }
}

function front(word: string): string {
  return word.slice(0, 1)
}

function end(word: string): string {
  return word.slice(-3)
}

function groupWords(words: readonly string[], key: (word: string) => string): ReadonlyMap<string, Fuse<string>> {
  return new Map([...new Set(words.map(key))].map((each) => [each, fuseOver(words.filter((word) => key(word) === each))]))
}

function judge(fuse: Fuse<string> | undefined, written: string): readonly Respelling[] {
  if (fuse === undefined) return []
  const near: Respelling[] = []
  for (const { item } of fuse.search(written, { limit: 40 })) {
    const limit = slipsAllowed(Math.min(item.length, written.length))
    const slips = slipsBetween(written, item, limit)
    if (slips <= limit) near.push({ word: item, slips })
  }
  return near.sort((a, b) => a.slips - b.slips || (a.word < b.word ? -1 : 1)).slice(0, 3)
}

function fuseOver(words: readonly string[]): Fuse<string> {
  // 0.4 lets through two faults in a word of five letters: wider than `slipsAllowed`, which has the last word.
  return new Fuse(words, { threshold: 0.4, distance: 8, includeScore: true, ignoreFieldNorm: true })
}
