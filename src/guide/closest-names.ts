import { distance } from 'fastest-levenshtein'

/**
 * The names nearest to what was written, best first, at most three.
 * A name counts as near within two edits, or a third of its length where that is more.
 */
export function closestNames(written: string, names: Iterable<string>): string[] {
  const near: { name: string; edits: number }[] = []
  const asked = written.toLowerCase()
  for (const name of names) {
    const edits = distance(asked, name.toLowerCase())
    if (edits <= Math.max(2, Math.floor(Math.max(name.length, asked.length) / 3))) near.push({ name, edits })
  }
  near.sort((a, b) => a.edits - b.edits || (a.name < b.name ? -1 : 1))
  return near.slice(0, 3).map(({ name }) => name)
}
