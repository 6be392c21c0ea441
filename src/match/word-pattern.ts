import { isPassedOver, PASSING_WORDS } from '../guide/index.js'
import { tokenize, type Token } from './tokens.js'

/**
 * A group word as an author writes it: one word, several words in a row, or words with choices.
 * `slugs/snails ate/chewed` stands for four phrases. Each step lists the choices at that place.
 */
export type WordPattern = readonly ReadonlySet<string>[]

/** Where a pattern was heard: first and last token, both included. */
export interface Span {
  readonly first: number
  readonly last: number
}

/**
 * Many groups of word patterns, made ready to be looked for in one walk over a text: a tree of steps in which patterns
 * that begin alike share their beginning, so that thousands of patterns with one first word cost no more than one.
 */
export interface PatternIndex {
  readonly root: Step
  /** Every word of every pattern, by group number. */
  readonly words: readonly ReadonlySet<string>[]
}

/** A place in the tree: what has been heard so far of all patterns that begin so. */
interface Step {
  /** The steps that a word leads to. One word may be among the choices of several. */
  readonly next: Map<string, Step[]>
  /** Numbers of the groups with a pattern that ends here. */
  readonly groups: number[]
}

/**
 * Compiles groups of group words. Words that say nothing ("some", "just") are left out of patterns of several words, or
 * with `fillers` "kept" must be heard as they are written: "all of them" is then not heard in every "them".
 */
export function buildPatternIndex(groups: readonly (readonly string[])[], fillers: 'passed over' | 'kept' = 'passed over'): PatternIndex {
  const root: Step = { next: new Map(), groups: [] }
  const following = new Map<Step, Map<string, Step>>()
  const words = groups.map(() => new Set<string>())
  for (const [group, written] of groups.entries()) {
    for (const one of written) {
      const pattern = fillers === 'kept' ? readPattern(one) : withoutFillers(readPattern(one))
      for (const choices of pattern) for (const word of choices) words[group]?.add(word)
      const { groups: ending } = pattern.reduce((step, choices) => stepBy(following, step, choices), root)
      if (pattern.length > 0 && !ending.includes(group)) ending.push(group)
    }
  }
  return { root, words }
}

/** The step that a set of choices leads to, new where no pattern has led there yet. */
function stepBy(following: Map<Step, Map<string, Step>>, from: Step, choices: ReadonlySet<string>): Step {
  const known = following.get(from) ?? new Map<string, Step>()
  following.set(from, known)
  const key = [...choices].sort().join('/')
  const there = known.get(key)
  if (there !== undefined) return there
  const step: Step = { next: new Map(), groups: [] }
  known.set(key, step)
  for (const word of choices) {
    const others = from.next.get(word)
    if (others === undefined) from.next.set(word, [step])
    else others.push(step)
  }
  return step
}

/** Where each group is heard, in order of the first word; groups that are not heard are missing. Fillers between words are passed over. */
export function findGroups(tokens: readonly Token[], { root }: PatternIndex): ReadonlyMap<number, readonly Span[]> {
  const found = new Map<number, Span[]>()
  // Looked up once: most words are passed by many patterns.
  const passing = tokens.map(({ text }) => PASSING_WORDS.has(text))
  for (const [first, token] of tokens.entries()) for (const step of stepsBy(root.next, token)) hear(found, tokens, passing, step, first, first)
  return found
}

/** Notes the patterns that end at a step, and follows those that go on. */
function hear(found: Map<number, Span[]>, tokens: readonly Token[], passing: readonly boolean[], { groups, next }: Step, first: number, last: number): void {
  if (groups.length > 0) {
    const span = { first, last }
    for (const group of groups) note(found, group, span)
  }
  if (next.size === 0) return
  // A choice is heard where it first stands; another may stand behind a filler that is itself a choice.
  const heard: Step[] = []
  const end = Math.min(tokens.length, last + 1 + MOST_PASSED_OVER + 1)
  for (let at = last + 1; at < end; at += 1) {
    const token = tokens[at]
    // The same filler once more leads nowhere new.
    const isAgain = at > last + 1 && token?.also === undefined && token?.text === tokens[at - 1]?.text
    if (!isAgain) {
      for (const step of stepsBy(next, token)) {
        if (heard.includes(step)) continue
        heard.push(step)
        hear(found, tokens, passing, step, first, at)
      }
    }
    if (passing[at] !== true) return
  }
}

/** Keeps a group's spans in order, each once: two of its patterns may end at one word. Those that begin earlier are noted already. */
function note(found: Map<number, Span[]>, group: number, span: Span): void {
  const spans = found.get(group)
  if (spans === undefined) {
    found.set(group, [span])
    return
  }
  let at = spans.length
  for (let before = spans[at - 1]; before !== undefined && before.first === span.first && before.last >= span.last; before = spans[at - 1]) {
    if (before.last === span.last) return
    at -= 1
  }
  if (at === spans.length) spans.push(span)
  else spans.splice(at, 0, span)
}

/** The steps that a word leads to, however it may be read. */
function stepsBy(next: Step['next'], token: Token | undefined): readonly Step[] {
  const here = next.get(token?.text ?? '') ?? NONE
  if (token?.also === undefined) return here
  return [...new Set([...here, ...token.also.flatMap((word) => next.get(word) ?? NONE)])]
}

const NONE: readonly Step[] = []
/** Nobody says so many fillers in a row, and a text of nothing else must not be walked over and over. */
const MOST_PASSED_OVER = 6

function readPattern(written: string): WordPattern {
  return written
    .split(/\s+/u)
    .map((step) => new Set(step.split('/').flatMap((choice) => tokenize(choice).map((token) => token.text))))
    .filter((choices) => choices.size > 0)
}

function withoutFillers(steps: WordPattern): WordPattern {
  const kept = steps.filter((choices) => !isPassedOver(choices))
  return kept.length === 0 ? steps : kept
}
