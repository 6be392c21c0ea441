import type { HostNames, NamedHost, Naming } from './hosts.js'
import { listed } from './languages/speech.js'
import type { HostCandidate } from './matched.js'
import type { Token } from './tokens.js'

/** What tells whether one of several plants named in a letter is the one it is about; see `plantSigns`. */
export type PlantSigns = readonly number[]

/**
 * How likely each of several named plants is the one in question, by the host's number; they add up to 1. People name the
 * plant they ask about early, again, and as theirs; those beside it come later, after "like", "in" or "for", in a row of names.
 * Conditional logit (McFadden 1974, Conditional logit analysis of qualitative choice behavior, from memory) over the plants
 * of one letter.
 */
export function plantsInQuestion(signs: ReadonlyMap<number, PlantSigns>): ReadonlyMap<number, number> {
  const odds = new Map([...signs].map(([host, values]) => [host, Math.exp(values.reduce((sum, value, at) => sum + value * (PLANT_WEIGHTS[at] ?? 0), 0))]))
  const all = [...odds.values()].reduce((sum, value) => sum + value, 0)
  return new Map([...odds].map(([host, value]) => [host, value / all]))
}

/**
 * The signs of each plant named, by the host's number: for fitting, and for `plantsInQuestion`.
 * @param ranked the hosts as they stand by their names and complaints, best first
 */
export function plantSigns(
  { speech, hosts }: HostNames, tokens: readonly Token[], namings: readonly Naming[], named: readonly NamedHost[], ranked: readonly HostCandidate[], isPlant: (host: number) => boolean,
): ReadonlyMap<number, PlantSigns> {
  const ofPlants = namings.filter((naming) => naming.hosts.some(isPlant)).sort((a, b) => a.first - b.first)
  const textAt = (place: number): string => tokens[place]?.text ?? ''
  const some = (few: readonly Naming[], holds: (naming: Naming) => boolean): number => Number(few.some(holds))
  const first = ranked.find(({ host }) => ofPlants.some(({ hosts: meant }) => meant.some((number) => isPlant(number) && hosts[number]?.id === host)))
  return new Map([...new Set(ofPlants.flatMap(({ hosts: meant }) => meant.filter(isPlant)))].map((number) => {
    const own = ofPlants.filter(({ hosts: meant }) => meant.includes(number))
    const id = hosts[number]?.id
    const at = own[0]?.first ?? 0
    return [number, [
      Number(at === ofPlants[0]?.first), Math.min(3, own.length) - 1, at / Math.max(SHORTEST, tokens.length),
      some(own, (one) => BELONGING.has(textAt(one.first - 1)) || BELONGING.has(textAt(one.first - 2))),
      some(own, (one) => !speech.names.between.has(textAt(one.first - 1))),
      some(own, (one) => [1, 2, 3, 4].some((step) => LIKENING.has(textAt(one.first - step)))),
      some(own, (one) => textAt(one.last + 1) === 'and'), some(own, (one) => JOINING.has(textAt(one.first - 1))),
      some(own, (one) => textAt(one.first - 1) === 'in' || textAt(one.first - 2) === 'in'), some(own, (one) => textAt(one.first - 1) === 'for' || textAt(one.first - 2) === 'for'),
      some(own, (one) => OTHERS.has(textAt(one.last + 1))), some(own, (one) => PARTS.has(textAt(one.last + 1))),
      named.find((one) => one.number === number)?.score ?? 0, ranked.find(({ host }) => host === id)?.score ?? 0, Number(first?.host === id),
    ]] as const
  }))
}

const BELONGING = listed('my our')
const LIKENING = listed('like as')
const JOINING = listed('and or')
/** "A plum type cherry", "lilac coloured". */
const OTHERS = listed('of type kind sort coloured colored')
/** In a few words the place says little. */
const SHORTEST = 12
const PARTS = listed('leaves leaf flowers fruit bark branches twigs stems roots buds bed')

/** Fitted by `tests/bench/fit-plants.ts`, in the order of the signs. */
const PLANT_WEIGHTS: readonly number[] = [0.04, 0.73, -4.43, 1.03, -0.22, -1.3, -0.61, -0.32, -1.01, -1.02, -2.53, 1.2, 1.9, 1.53, 0.65]
