/** What the hearing makes of a group word that is not heard as it is written. */
export interface Misheard {
  readonly kind: 'one word is left' | 'words are parted'
  /** As it is heard: the one word (with its choices), or the parted words. */
  readonly heardAs: string
}

/**
 * Whether a step of a group word ("ate", "a/the") is passed over: every choice in it is a word that changes nothing.
 * @param choices folded words
 */
export function isPassedOver(choices: Iterable<string>): boolean {
  return [...choices].every((choice) => PASSING_WORDS.has(choice) && choice !== BIT)
}

/**
 * How a group word of a red flag is heard where that is not as its author wrote it; null where it is. Of several words
 * only one may be left when those that change nothing are passed over ("like sweets" is heard in every "sweets"), and
 * a hyphen or other mark inside a choice makes two choices of it ("weed-killer/spray").
 */
export function misheard(written: string): Misheard | null {
  // A set stands for words that tell something.
  const steps = written.trim().replace(/\([^()]*\)/gu, 'set').split(/\s+/u).map((step) => step.split('/'))
  const parted = steps.flat().find((choice) => /[\p{L}\p{N}][^\p{L}\p{N}\p{M}'’]+[\p{L}\p{N}]|[?!;:]$/u.test(choice))
  if (parted !== undefined) return { kind: 'words are parted', heardAs: parted.split(/[^\p{L}\p{N}\p{M}'’]+/u).filter((word) => word !== '').join(' or ') }
  const kept = steps.filter((choices) => !isPassedOver(choices.map((choice) => choice.toLowerCase())))
  const [only] = kept
  return only !== undefined && kept.length === 1 && steps.length > 1 ? { kind: 'one word is left', heardAs: only.join('/') } : null
}

/** Words that come between others without changing what happened: "ate some berries" is "ate berries". */
export const PASSING_WORDS: ReadonlySet<string> = new Set([
  'a', 'an', 'the', 'some', 'sum', 'sme', 'just', 'jus', 'really', 'actually', 'accidentally', 'accidently', 'already',
  'also', 'even', 'maybe', 'probably', 'possibly', 'definitely', 'now', 'all', 'only', 'apparently', 'somehow', 'literally',
  'of', 'bit', 'few', 'couple', 'lots', 'lot', 'loads', 'um', 'er', 'like',
])

/** Passed over in "a bit of leaf", but a word of its own in "the dog bit the bulb". */
const BIT = 'bit'
