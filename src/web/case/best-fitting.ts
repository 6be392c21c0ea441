interface Fitting<Row> {
  readonly shown: readonly Row[]
  /** How many more fit but are not shown. */
  readonly hidden: number
}

/**
 * The rows whose names hold every typed word, those whose name starts with the typed text first.
 * At most `most` are shown: a longer list is slower to read than another letter is to type.
 */
export function bestFitting<Row>(rows: readonly Row[], names: (row: Row) => readonly string[], typed: string, most = 8): Fitting<Row> {
  const wanted = fold(typed).split(' ').filter(word => word !== '')
  const starts: Row[] = []
  const holds: Row[] = []
  for (const row of rows) {
    const folded = names(row).map(fold)
    if (wanted.length > 0 && folded.some(name => name.startsWith(wanted.join(' ')))) starts.push(row)
    else if (folded.some(name => wanted.every(word => name.includes(word)))) holds.push(row)
  }
  const all = [...starts, ...holds]
  return { shown: all.slice(0, most), hidden: Math.max(0, all.length - most) }
}

/** Case and accents aside, so that 'Gunnera' is found by 'gunnéra'. */
function fold(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
}
