import { type HeardHosts, type Naming, UNKNOWN_PLANT } from './hosts.js'
import { WEIGHTS } from './score.js'
import { singular } from './stems.js'
import type { Token } from './tokens.js'

/** What the subject of a question is judged by: names of features to their values, mostly 0 or 1. Missing ones are 0. */
export type SubjectFeatures = ReadonlyMap<string, number>

/** The words of a question, as far as its subject is judged by them. */
export interface SubjectWords {
  /** Kinds heard, by name. */
  readonly kinds: ReadonlyMap<string, number>
  /** How strongly the words point to a problem of one of these kinds of the plants named: 0 to 1, null where they have none. */
  readonly strengthOf: (problemKinds: ReadonlySet<string>) => number | null
}

/**
 * Reads from a question what its subject is judged by: the kinds of words in it, some pairs of kinds, and how plants are
 * named in it.
 * @param isPlant tells whether a host, by number, is a plant that can be named (not the unknown plant, no insect, no soil)
 */
export function subjectFeatures(
  { kinds, strengthOf }: SubjectWords, tokens: readonly Token[], { named, namings, otherPlant }: Pick<HeardHosts, 'named' | 'namings' | 'otherPlant'>,
  isPlant: (host: number) => boolean,
): SubjectFeatures {
  const features = new Map<string, number>()
  const set = (name: string, holds: boolean, value = 1): void => { if (holds) features.set(name, value) }
  const telling = tellingOf(tokens.length)
  for (const kind of kinds.keys()) features.set(kind, telling)
  const plants = named.filter(({ number }) => isPlant(number))
  const sure = plants.some(({ score }) => score >= WEIGHTS.hostNamed)
  const plantNamings = namings.filter((naming) => naming.other || naming.hosts.some(isPlant))
  set('plant', sure)
  set('plant in passing', !sure && plants.length > 0)
  set('other plant', otherPlant >= WEIGHTS.hostNamed)
  set('several plants', plants.length + (otherPlant > 0 ? 1 : 0) > 1)
  set('only some plant', plants.length === 0 && named.some(({ host }) => host === UNKNOWN_PLANT))
  set('plant first', plantNamings.some(({ first }) => first <= 2))
  set('part of plant', plantNamings.some((naming) => isOfPart(naming, tokens)))
  set('on plant', plantNamings.some((naming) => ON.has(wordBefore(naming, tokens))))
  set('plant and part', plantNamings.length > 0 && kinds.has('parts'))
  set('plant and sign', plantNamings.length > 0 && kinds.has('symptoms'))
  for (const [name, of] of OWN_PROBLEMS) {
    const strength = strengthOf(of)
    if (strength === null) continue
    features.set(`plant has ${name}`, 1)
    features.set(`${name} of the plant`, strength)
  }
  for (const [one, other] of PAIRS) set(`${one} + ${other}`, (kinds.has(one) || features.has(one)) && (kinds.has(other) || features.has(other)), telling)
  set('short', tokens.length <= SHORT)
  return features
}

/**
 * How much one word of a kind tells in a question of so many words, 0 to 1. A letter of a hundred words names the garden,
 * the weather and the children whatever it is about, so that there each tells less than in a line of ten.
 */
function tellingOf(words: number): number {
  return Math.min(1, LINE / Math.max(1, words))
}

/** "rose leaves", "leaves of the rose", "leaves on my rose". */
function isOfPart({ first, last }: Naming, tokens: readonly Token[]): boolean {
  const textAt = (place: number): string => singular(tokens[place]?.text ?? '')
  if (PARTS.has(textAt(last + 1))) return true
  const before = placeBefore(first, tokens)
  return JOINS.has(textAt(before)) && PARTS.has(textAt(before - 1))
}

function wordBefore({ first }: Naming, tokens: readonly Token[]): string {
  return tokens[placeBefore(first, tokens)]?.text ?? ''
}

/** The place of the last word before a name and its "my", "the", "all the". */
function placeBefore(first: number, tokens: readonly Token[]): number {
  let before = first - 1
  while (before >= 0 && OWNERS.has(tokens[before]?.text ?? '')) before -= 1
  return before
}

const SHORT = 5
/** Words up to which each kind tells in full: longer than nearly all the questions that the weights are fitted to. */
const LINE = 40
const PARTS: ReadonlySet<string> = new Set('leaf stem root fruit flower bud bloom trunk bark branch twig shoot needle pod head bulb tuber berry tip seedling foliage petal frond cane stalk'.split(' '))
const JOINS: ReadonlySet<string> = new Set('of on in'.split(' '))
const ON: ReadonlySet<string> = new Set('on of eat eating ate chewing attacking in inside over damaging destroying'.split(' '))
const OWNERS: ReadonlySet<string> = new Set('a an the my our your his her their this that some all every'.split(' '))

/** "Deer ate my hostas" is a complaint of hostas, which deer eat; of a plant whose tree knows no deer it is one about deer. */
const OWN_PROBLEMS: readonly (readonly [string, ReadonlySet<string>])[] = [
  ['animals', new Set(['mammal or bird'])], ['insects', new Set(['insect', 'mite'])], ['soil', new Set(['disorder', 'weather', 'nutrition', 'chemical injury'])], ['harmless', new Set(['harmless'])],
]

/** Kinds that tell more together than apart. */
const PAIRS: readonly (readonly [string, string])[] = [
  ['insects', 'indoors'], ['insects', 'outdoor places'], ['insects', 'stores'], ['insects', 'names it'], ['insects', 'parts'], ['insects', 'symptoms'], ['insects', 'plant'],
  ['insects', 'eats'], ['insects', 'insect looks'], ['insects', 'swarms and nests'], ['insects', 'bites'], ['insect looks', 'indoors'], ['insect looks', 'outdoor places'],
  ['wild animals', 'eats'], ['wild animals', 'digs'], ['wild animals', 'plant'], ['wild animals', 'keeps out'], ['wild animals', 'animal signs'], ['eats', 'animal signs'], ['digs', 'animal signs'],
  ['tame animals', 'poison'], ['small people', 'poison'], ['poison', 'asks'], ['poison', 'plant'], ['poison', 'fungi and berries'], ['poison', 'symptoms'], ['tame animals', 'digs'], ['tame animals', 'eats'],
  ['soil', 'plant'], ['soil', 'symptoms'], ['soil', 'soil tests'], ['soil', 'wet places'], ['soil', 'everything'], ['soil', 'spoilers'], ['soil', 'parts'],
  ['everything', 'weather'], ['everything', 'symptoms'], ['everything', 'spoilers'], ['weather', 'plant'], ['weather', 'parts'], ['weather', 'several plants'], ['wet places', 'plant'], ['soil tests', 'plant'],
  ['insects', 'other plant'], ['wild animals', 'other plant'], ['poison', 'other plant'], ['insects', 'on plant'], ['wild animals', 'on plant'], ['wild animals', 'plant has animals'], ['eats', 'plant has animals'], ['digs', 'plant has animals'],
  ['insects', 'plant has insects'], ['soil', 'plant has soil'], ['poison', 'short'], ['poison', 'on plant'],
  ['weeds', 'weed ways'], ['weeds', 'names it'], ['weed ways', 'plant'], ['weed ways', 'names it'], ['symptoms', 'parts'],
]
