/** The set that a group word of a red flag stands for, or null for an ordinary word: "(people)" stands for the set "people". */
export function wordSetNamed(word: string): string | null {
  return /^\(([a-z][a-z -]*)\)$/.exec(word.trim())?.[1] ?? null
}

/** A group with the words of every set in it in place of the set's name; sets may name other sets. */
export function spreadWordSets(group: readonly string[], sets: ReadonlyMap<string, readonly string[]>, within: readonly string[] = []): string[] {
  return group.flatMap((word) => {
    const name = wordSetNamed(word)
    if (name === null) return [word]
    // A set inside itself adds nothing.
    return within.includes(name) ? [] : spreadWordSets(sets.get(name) ?? [], sets, [...within, name])
  })
}
