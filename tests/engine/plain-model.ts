import { checkModel, type Model } from '../../src/engine/index.js'

/** ln of a table of shares, row by row. */
export function logTable(rows: readonly (readonly number[])[]): Float64Array {
  return Float64Array.from(rows.flat(), Math.log)
}

/** A model with one row a problem and the given tables; every problem equally common for the background. */
export function plainModel(problems: number, tables: readonly Float64Array[], groups: readonly number[] = []): Model {
  const weights = new Float64Array(problems).fill(1)
  return {
    problems, rows: problems, problemOfRow: Int32Array.from({ length: problems }, (_, row) => row),
    logRowShare: new Float64Array(problems),
    checks: tables.map((table, place) => checkModel(table, weights, 1, groups[place] ?? -1)),
    groups: Math.max(-1, ...groups) + 1,
  }
}
