/** Solves a system of linear equations by Gauss-Jordan elimination. It is to be small and positive definite, so no pivoting is needed. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((line, at) => [...line, right[at] ?? 0])
  for (let pivot = 0; pivot < rows.length; pivot += 1) {
    const line = rows[pivot] ?? []
    const scale = line[pivot] ?? 1
    for (let at = 0; at < line.length; at += 1) line[at] = (line[at] ?? 0) / scale
    for (const [row, other] of rows.entries()) {
      if (row === pivot) continue
      const factor = other[pivot] ?? 0
      for (let at = 0; at < other.length; at += 1) other[at] = (other[at] ?? 0) - factor * (line[at] ?? 0)
    }
  }
  return rows.map((line) => line[line.length - 1] ?? 0)
}
