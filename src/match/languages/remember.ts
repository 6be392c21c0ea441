/** Keeps what was once reckoned, up to a bound: the same few thousand words come again and again. */
export function remember(form: (word: string) => string): (word: string) => string {
  const kept = new Map<string, string>()
  return (word) => {
    const known = kept.get(word)
    if (known !== undefined) return known
    const found = form(word)
    if (kept.size >= MOST_KEPT) kept.clear()
    kept.set(word, found)
    return found
  }
}

const MOST_KEPT = 8192
