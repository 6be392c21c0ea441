import type { DescribedCases } from './described-cases.js'

/** Values tried for each check: from "a new plant shows just what the case it resembles showed" to "this check has no part in the resemblance". */
const CHOICES = [0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1]

const ROUNDS = 3

/**
 * How loosely each check binds a new plant to the case it resembles, chosen so that every case is foretold best by the
 * other cases of its problem (likelihood cross-validation, leaving one out; for discrete kernels: Aitchison & Aitken
 * 1976, Biometrika 63:413-420, from memory). One check at a time, round by round.
 * @param profiles P(answer | problem) by check, row by row
 * @param profileCases the whole profile counts as this many cases
 */
export function fitLooseness(
  { answers, cases }: DescribedCases, profiles: readonly Float64Array[], profileCases: number, start: number,
): Float64Array {
  const looseness = new Float64Array(answers.length).fill(start)
  const byProblem = new Map<number, number[]>()
  cases.forEach(({ problem }, place) => { byProblem.set(problem, [...(byProblem.get(problem) ?? []), place]) })
  const groups = [...byProblem.values()].filter((group) => group.length > 1)

  const shareOf = (check: number, place: number): number => {
    const one = cases[place]
    const answer = one?.answers[check] ?? -1
    return one === undefined || answer < 0 ? 1 : profiles[check]?.[one.problem * (answers[check] ?? 1) + answer] ?? 1
  }
  /** ln of how well case `j` foretells case `i` at one check. */
  const bond = (check: number, i: number, j: number, loose: number): number => {
    const own = cases[i]?.answers[check] ?? -1
    if (own < 0) return 0
    const other = cases[j]?.answers[check] ?? -1
    const share = shareOf(check, i)
    return Math.log(other < 0 ? share : (1 - loose) * (other === own ? 1 : 0) + loose * share)
  }
  const whole = cases.map((_, place) => answers.reduce((sum, _count, check) => sum + Math.log(shareOf(check, place)), 0))
  const bonds = groups.map((group) => {
    const size = group.length
    const table = new Float64Array(size * size)
    group.forEach((i, row) => group.forEach((j, column) => {
      let sum = 0
      for (let check = 0; check < answers.length; check++) sum += bond(check, i, j, looseness[check] ?? start)
      table[row * size + column] = sum
    }))
    return table
  })

  for (let round = 0; round < ROUNDS; round++) {
    let isChanged = false
    for (let check = 0; check < answers.length; check++) {
      const now = looseness[check] ?? start
      let best = now
      let bestFit = -Infinity
      // Each pair's fit without this check, and what the check adds when the two agree, differ or are not comparable.
      const fits = new Float64Array(CHOICES.length)
      groups.forEach((group, number) => {
        const size = group.length
        const table = bonds[number]
        group.forEach((i, row) => {
          const alone = whole[i] ?? 0
          const own = cases[i]?.answers[check] ?? -1
          const share = shareOf(check, i)
          let agree = 0
          let differ = 0
          let open = profileCases
          for (let column = 0; column < size; column++) {
            if (column === row) continue
            const j = group[column] ?? 0
            const rest = Math.exp((table?.[row * size + column] ?? 0) - bond(check, i, j, now) - alone)
            const other = cases[j]?.answers[check] ?? -1
            if (own < 0) open += rest
            else if (other < 0) open += rest * share
            else if (other === own) agree += rest
            else differ += rest
          }
          CHOICES.forEach((choice, place) => {
            const sum = open + agree * (1 - choice + choice * share) + differ * choice * share
            fits[place] = (fits[place] ?? 0) + alone + Math.log(sum / (size - 1 + profileCases))
          })
        })
      })
      fits.forEach((fit, place) => {
        if (fit <= bestFit + 1e-9) return
        bestFit = fit
        best = CHOICES[place] ?? now
      })
      if (best === now) continue
      isChanged = true
      groups.forEach((group, number) => {
        const size = group.length
        const table = bonds[number]
        if (table === undefined) return
        group.forEach((i, row) => group.forEach((j, column) => {
          const cell = row * size + column
          table[cell] = (table[cell] ?? 0) - bond(check, i, j, now) + bond(check, i, j, best)
        }))
      })
      looseness[check] = best
    }
    if (!isChanged) break
  }
  return looseness
}
