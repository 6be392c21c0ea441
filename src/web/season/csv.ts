/** A table as it is drawn, shown and taken away: the heads of its columns, then its rows. */
export interface Table {
  readonly heads: readonly string[]
  readonly rows: readonly (readonly (string | number | null)[])[]
}

/** A table as CSV (RFC 4180): lines end with CR and LF, and a value that holds a comma, a quote or a line end is quoted. */
export function csvOf({ heads, rows }: Table): string {
  return [heads, ...rows].map(row => row.map(cell).join(',')).join('\r\n') + '\r\n'
}

/** A text that a spreadsheet would take for a formula gets an apostrophe before it: names come from people. */
function cell(value: string | number | null): string {
  if (value === null) return ''
  if (typeof value === 'number') return String(value)
  const calm = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(calm) ? `"${calm.replaceAll('"', '""')}"` : calm
}
