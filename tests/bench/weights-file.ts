import type { SparseFit } from './fit-sparse.js'

/**
 * Fitted weights as they stand in a TypeScript file: `{ base: -1.2, signs: new Map(...) }`, by name, two decimals.
 * @param least weights smaller than this are left out
 * @param always tells of a sign that is written however small its weight: that it was learnt from is worth knowing
 */
export function mapLines({ base, weights }: SparseFit, names: readonly string[], least: number, indent: string, always: (sign: number) => boolean = () => false): string {
  const parts = names.map((name, sign) => [name, weights[sign] ?? 0, sign] as const).filter(([, value, sign]) => Math.abs(value) >= least || always(sign))
    .sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, value]) => `['${name.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}', ${rounded(value)}],`)
  return `{ base: ${rounded(base)}, signs: new Map([\n${wrapped(parts, `${indent}  `)}\n${indent}]) }`
}

/** Parts of a list, as many to a line as the line holds. */
export function wrapped(parts: readonly string[], indent: string): string {
  const lines: string[] = []
  for (const part of parts) {
    const last = lines[lines.length - 1]
    if (last === undefined || last.length + part.length > 150) lines.push(`${indent}${part}`)
    else lines[lines.length - 1] = `${last} ${part}`
  }
  return lines.join('\n')
}

/** Two decimals: more than the letters can tell. */
export function rounded(value: number): number {
  return Math.round(value * 100) / 100
}
