import type { RedFlag } from '../guide/index.js'
import { clauseAround } from './clauses.js'
import { hearKinds, type KindEars } from './kinds.js'
import type { EntryCandidate, HeardRedFlag, HeardWords, HostCandidate } from './matched.js'
import { CONDITIONS } from './subjects.js'
import { tokenize, type Token } from './tokens.js'

/** Kinds of words of what eats a plant: what a danger says was eaten, no pest has. */
const EATS_IT = ['eats', 'pests of plants', 'wild animals'] as const

/** Kinds of words of what ails a plant: the words of a danger are not meant so, unless they are of berries or mushrooms. */
const AILS_IT = ['insects', 'symptoms'] as const
const OF_BERRIES = ['fungi and berries'] as const

/** Kinds of words of what does the harm: the words of a danger may well be meant so. */
const OF_THE_HARM = ['poison', 'spoilers'] as const

/** What a danger is heard with, and the red flags of the guide. */
interface DangerEars {
  readonly kinds: KindEars
  readonly redFlagsById: ReadonlyMap<string, RedFlag>
}

/**
 * The complaints that are told beside an emergency. What only the clause of the danger says of a plant's ills is no
 * complaint: "the dog ate the leaves of my yew" tells of no yew that something eats. A way to what did the harm, poison,
 * berries or a spilt spray, stays whatever it rests on.
 * @param hosts the plants heard: their names tell no complaint either
 */
export function toldBesideDanger(
  { kinds, redFlagsById }: DangerEars, words: string, tokens: readonly Token[], redFlags: readonly HeardRedFlag[],
  hosts: readonly HostCandidate[], entries: readonly EntryCandidate[],
): readonly EntryCandidate[] {
  const emergencies = redFlags.filter(({ level }) => level === 'emergency')
  const ofHarm = new Set<string>(emergencies.flatMap(({ redFlag }) => redFlagsById.get(redFlag)?.afterwards?.host ?? []))
  // A cracked limb, or a spray that blew over the beds, is a danger and the complaint in one.
  if ([...ofHarm].every((host) => host === CONDITIONS) || emergencies.some(({ redFlag }) => (redFlagsById.get(redFlag)?.afterwards ?? null) === null)) return entries
  const silent = new Set(hosts.flatMap((host) => host.words).flatMap((name) => placesOf(tokens, name)))
  const ofDanger = emergencies.flatMap((flag) => flag.words).flatMap((heard) => placesOf(tokens, heard)).filter((place) => !silent.has(place))
  for (const place of ofDanger) {
    const { first, last } = clauseAround(kinds.speech, words, tokens, { first: place, last: place })
    for (let within = first; within <= last; within += 1) silent.add(within)
  }
  return entries.filter((entry) => ofHarm.has(entry.host) || !isOfThePlant(kinds, entry.phrase)
    || entry.words.some((heard) => placesOf(tokens, heard).some((place) => !silent.has(place))))
}

function isOfThePlant(kinds: KindEars, phrase: string): boolean {
  const heard = hearKinds(kinds, tokenize(phrase), new Set())
  const isOf = (some: readonly string[]): boolean => some.some((kind) => heard.has(kind))
  return !isOf(OF_THE_HARM) && (isOf(EATS_IT) || (isOf(AILS_IT) && !isOf(OF_BERRIES)))
}

/** The places of the tokens that stand in words of the question. */
function placesOf(tokens: readonly Token[], { at, text }: HeardWords): readonly number[] {
  return tokens.flatMap((token, place) => (token.at < at + text.length && token.end > at ? [place] : []))
}
