import type { DescribedCase, DescribedCases } from './described-cases.js'

/** Values tried for each check: from "a new plant shows just what the case it resembles showed" to "this check has no part in the resemblance". */
const CHOICES = [0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1]

const ROUNDS = 3

/** No share is taken for less, so that rounding never makes one nothing. */
const LEAST_SHARE = 1e-4

/** One check's profiles as learnt from cases. */
export interface WholeProfile {
  /** P(answer | problem), problem by problem. */
  readonly shares: Float64Array
  /** Cases of each problem in which the check was recorded. */
  readonly recorded: Float64Array
  /** Cases that the background counts as. */
  readonly pooling: number
}

/**
 * How loosely each check binds a new plant to the case it resembles, chosen so that every case is foretold best by the
 * other cases of its problem (likelihood cross-validation, leaving one out; for discrete kernels: Aitchison & Aitken
 * 1976, Biometrika 63:413-420, from memory). One check at a time, round by round.
 * The profile that a case is held against is taken without the case itself, as the other cases are.
 * @param profiles by check
 * @param profileCases the whole profile counts as this many cases
 */
export function fitLooseness(
  { answers, cases }: DescribedCases, profiles: readonly WholeProfile[], profileCases: number, start: number,
): Float64Array {
  const looseness = new Float64Array(answers.length).fill(start)
  const byProblem = new Map<number, DescribedCase[]>()
  for (const one of cases) byProblem.set(one.problem, [...(byProblem.get(one.problem) ?? []), one])
  const groups = [...byProblem.values()].filter((group) => group.length > 1)
    .map((group) => new LikeGroup(group, answers, profiles, start))

  for (let round = 0; round < ROUNDS; round++) {
    let isChanged = false
    for (let check = 0; check < answers.length; check++) {
      const now = looseness[check] ?? start
      const fits = new Float64Array(CHOICES.length)
      for (const group of groups) group.addFits(fits, check, now, profileCases)
      let best = now
      let bestFit = -Infinity
      fits.forEach((fit, place) => {
        if (fit <= bestFit + 1e-9) return
        bestFit = fit
        best = CHOICES[place] ?? now
      })
      if (best === now) continue
      isChanged = true
      for (const group of groups) group.change(check, now, best)
      looseness[check] = best
    }
    if (!isChanged) break
  }
  return looseness
}

/** The cases of one problem, and how much better each foretells each other one than the problem's whole profile does. */
class LikeGroup {
  readonly #size: number
  /** Answers check by check, case by case; -1 where not recorded. */
  readonly #seen: Int8Array
  /** P(own answer | problem) by the profile of the others, check by check, case by case. */
  readonly #shares: Float64Array
  /** P(answers of `row` | it resembles `column`) ÷ P(answers of `row` | whole profile). */
  readonly #ratios: Float64Array

  constructor(group: readonly DescribedCase[], answers: readonly number[], profiles: readonly WholeProfile[], loose: number) {
    this.#size = group.length
    this.#seen = Int8Array.from(answers.flatMap((_, check) => group.map((one) => one.answers[check] ?? -1)))
    this.#shares = Float64Array.from(answers.flatMap((count, check) => group.map((one) => shareWithout(profiles[check], one, one.answers[check] ?? -1, count))))
    this.#ratios = new Float64Array(this.#size ** 2).fill(1)
    for (let check = 0; check < answers.length; check++) this.change(check, 1, loose)
  }

  /** Adds ln P(each case | the others of its problem) for each choice of looseness at a check that now has looseness `now`. */
  addFits(fits: Float64Array, check: number, now: number, profileCases: number): void {
    const [size, seen, ratios, from] = [this.#size, this.#seen, this.#ratios, check * this.#size]
    for (let row = 0; row < size; row++) {
      const own = seen[from + row] ?? -1
      const share = this.#shares[from + row] ?? 1
      // What the others foretell without this check, by whether they agree with the case, differ or cannot be compared.
      let agree = 0
      let differ = 0
      let open = profileCases
      for (let column = 0; column < size; column++) {
        if (column === row) continue
        const ratio = ratios[row * size + column] ?? 0
        const other = seen[from + column] ?? -1
        if (own < 0 || other < 0) open += ratio
        else if (other === own) agree += ratio
        else differ += ratio
      }
      agree /= (1 - now) / share + now
      differ /= now
      for (let place = 0; place < CHOICES.length; place++) {
        const choice = CHOICES[place] ?? 1
        fits[place] = (fits[place] ?? 0) + Math.log(open + agree * ((1 - choice) / share + choice) + differ * choice)
      }
    }
  }

  /** Turns the looseness of a check from one value to another. */
  change(check: number, from: number, to: number): void {
    const [size, seen, ratios, start] = [this.#size, this.#seen, this.#ratios, check * this.#size]
    for (let row = 0; row < size; row++) {
      const own = seen[start + row] ?? -1
      if (own < 0) continue
      const share = this.#shares[start + row] ?? 1
      const agree = ((1 - to) / share + to) / ((1 - from) / share + from)
      const differ = to / from
      for (let column = 0; column < size; column++) {
        const other = seen[start + column] ?? -1
        if (other < 0) continue
        const cell = row * size + column
        ratios[cell] = (ratios[cell] ?? 0) * (other === own ? agree : differ)
      }
    }
  }
}

/** P(the case's own answer | its problem) by the profile of the other cases; 1 where it was not recorded. */
function shareWithout(profile: WholeProfile | undefined, { problem }: DescribedCase, answer: number, answers: number): number {
  if (profile === undefined || answer < 0) return 1
  const share = profile.shares[problem * answers + answer] ?? 1
  const weight = (profile.recorded[problem] ?? 0) + profile.pooling
  return weight <= 1 ? share : Math.max(LEAST_SHARE, (share * weight - 1) / (weight - 1))
}
