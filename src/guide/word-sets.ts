import type { HearingDraft } from './drafts.js'
import type { RedFlagHearing } from './guide.js'

/** The sets of words that a group word of a red flag names: "(people)" alone, or in a pattern as in "(people) ate/swallowed". */
export function wordSetsNamed(word: string): readonly string[] {
  return [...word.matchAll(NAMED)].map(([, name]) => name ?? '')
}

/**
 * A group with the words of every set in it in place of the set's name; sets may name other sets. Within a pattern of
 * several steps a set stands for a choice, so only its single words take part there.
 */
export function spreadWordSets(group: readonly string[], sets: ReadonlyMap<string, readonly string[]>, within: readonly string[] = []): string[] {
  const members = (name: string): string[] => (
    // A set inside itself adds nothing.
    within.includes(name) ? [] : spreadWordSets(sets.get(name) ?? [], sets, [...within, name]))
  return group.flatMap((word) => {
    const alone = ALONE.exec(word.trim())?.[1]
    if (alone !== undefined) return members(alone)
    let allChosen = true
    const spread = word.replace(NAMED, (_, name: string) => {
      const choices = members(name).filter((member) => !/\s/.test(member))
      allChosen &&= choices.length > 0
      return choices.join('/')
    })
    // A choice of nothing is never heard; without its step the pattern would be heard far too often.
    return allChosen ? [spread] : []
  })
}

/** The set that the guide makes by itself: the names of one word by which plants are called, and their plurals. */
export const PLANT_NAMES = 'plant names'

/** The words of the set of plant names. @param called names by which hosts are called, as the guide writes them */
export function plantNames(called: Iterable<string>): readonly string[] {
  const single = [...called].map((name) => name.trim().toLowerCase()).filter((name) => /^\p{L}{3,}$/u.test(name))
  return [...new Set(single.flatMap((name) => [name, name.endsWith('s') ? name : `${name}s`]))].sort()
}

/** A red flag's hearings with the words of every set in place of its name. */
export function spreadHearings(hear: readonly HearingDraft[], sets: ReadonlyMap<string, readonly string[]>): RedFlagHearing[] {
  const spread = (groups: readonly (readonly string[])[]): string[][] => groups.map((group) => spreadWordSets(group, sets))
  return hear.map((hearing) => ({
    ...hearing, allOf: spread(hearing.allOf), phrases: spreadWordSets(hearing.phrases, sets), unless: spread(hearing.unless),
  }))
}

const NAMED = /\(([a-z][a-z -]*)\)/g
const ALONE = /^\(([a-z][a-z -]*)\)$/
