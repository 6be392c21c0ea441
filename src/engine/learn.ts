import type { DescribedCase, DescribedCases } from './described-cases.js'
import { fitLooseness } from './looseness.js'
import { checkModel, type Model } from './model.js'

export interface LearnOptions {
  /** How far a new plant may differ from a case it resembles: share of each answer taken from the problem's whole profile. */
  readonly looseness: number | 'fit'
  /** The problem's whole profile counts as this many cases of it. */
  readonly profileCases: number
  /** The background counts as this many cases in the profile of each problem. */
  readonly smoothing: number
  /** Chance that a person picks a wrong answer at a check. */
  readonly misread: number
  /** Prior share of *something not listed here*. */
  readonly notListed: number
}

export interface Learnt {
  readonly model: Model
  /** ln prior of each problem, the last *something not listed here*. */
  readonly logPriors: Float64Array
  /** ln P(answer | problem) by check, row by row, with the not-listed row: the profiles alone, as a written guide has them. */
  readonly profiles: readonly Float64Array[]
}

/**
 * Learns a model from described cases. Each problem gets one row for its whole profile and one for every case of it: the
 * forms in which it has been seen. Rows keep together what is seen together, which a profile alone cannot. A cell that was not
 * recorded is skipped: it is neither a value nor filled in, and how often a check was recorded is taken over all
 * problems alike. Without cases nothing is left but the profiles.
 * (A mixture of kernels on cases; kernels for discrete data: Aitchison & Aitken 1976, Biometrika 63:413-420, from memory.)
 */
export function learnModel({ answers, problems, cases }: DescribedCases, options: LearnOptions): Learnt {
  const perProblem = new Float64Array(problems)
  for (const { problem } of cases) perProblem[problem] = (perProblem[problem] ?? 0) + 1
  const rows = problems + cases.length + 1
  const problemOfRow = new Int32Array(rows)
  const logRowShare = new Float64Array(rows)
  const rowWeights = new Float64Array(rows)
  for (let problem = 0; problem < problems; problem++) {
    problemOfRow[problem] = problem
    const count = perProblem[problem] ?? 0
    logRowShare[problem] = Math.log(options.profileCases / (count + options.profileCases))
    rowWeights[problem] = count / cases.length * Math.exp(logRowShare[problem] ?? 0)
  }
  cases.forEach(({ problem }, place) => {
    const row = problems + place
    problemOfRow[row] = problem
    const count = perProblem[problem] ?? 0
    logRowShare[row] = -Math.log(count + options.profileCases)
    rowWeights[row] = count / cases.length * Math.exp(logRowShare[row] ?? 0)
  })
  problemOfRow[rows - 1] = problems

  const profiles: Float64Array[] = []
  const wholes = answers.map((count, check) => profileOf(check, count, problems, cases, options.smoothing))
  const looseness = options.looseness === 'fit'
    ? fitLooseness({ answers, problems, cases }, wholes, options.profileCases, 0.35)
    : new Float64Array(answers.length).fill(options.looseness)
  const checks = answers.map((count, check) => {
    const profile = wholes[check] ?? new Float64Array()
    const loose = looseness[check] ?? 1
    const table = new Float64Array(rows * count)
    const put = (row: number, share: (answer: number) => number): void => {
      for (let answer = 0; answer < count; answer++) {
        table[row * count + answer] = Math.log((1 - options.misread) * share(answer) + options.misread / count)
      }
    }
    for (let problem = 0; problem <= problems; problem++) put(problem, (answer) => profile[problem * count + answer] ?? 0)
    profiles.push(table.slice(0, (problems + 1) * count))
    const notListed = table.slice(problems * count, (problems + 1) * count)
    cases.forEach(({ problem, answers: seen }, place) => {
      const own = seen[check] ?? -1
      put(problems + place, (answer) => {
        const whole = profile[problem * count + answer] ?? 0
        return own < 0 ? whole : (1 - loose) * (answer === own ? 1 : 0) + loose * whole
      })
    })
    table.set(notListed, (rows - 1) * count)
    const recorded = cases.filter(({ answers: seen }) => (seen[check] ?? -1) >= 0).length
    // A check that often goes unanswered is that much more trouble to ask.
    return checkModel(table, rowWeights, (cases.length + 2) / (recorded + 1))
  })
  const logPriors = Float64Array.from({ length: problems + 1 }, (_, problem) =>
    Math.log(problem === problems ? options.notListed : (1 - options.notListed) * (perProblem[problem] ?? 0) / cases.length))
  return { model: { problems: problems + 1, rows, problemOfRow, logRowShare, checks, groups: 0 }, logPriors, profiles }
}

/** P(answer | problem) from counts, smoothed by the background; the last row, *not listed*, is halfway from it to even odds. */
function profileOf(check: number, count: number, problems: number, cases: readonly DescribedCase[], smoothing: number): Float64Array {
  const seen = new Float64Array(problems * count)
  const perProblem = new Float64Array(problems)
  const background = new Float64Array(count).fill(1)
  let recorded = count
  for (const { problem, answers } of cases) {
    const answer = answers[check] ?? -1
    if (answer < 0) continue
    seen[problem * count + answer] = (seen[problem * count + answer] ?? 0) + 1
    perProblem[problem] = (perProblem[problem] ?? 0) + 1
    background[answer] = (background[answer] ?? 0) + 1
    recorded += 1
  }
  const profile = new Float64Array((problems + 1) * count)
  for (let answer = 0; answer < count; answer++) {
    const usual = (background[answer] ?? 0) / recorded
    for (let problem = 0; problem < problems; problem++) {
      profile[problem * count + answer] = ((seen[problem * count + answer] ?? 0) + smoothing * usual) / ((perProblem[problem] ?? 0) + smoothing)
    }
    profile[problems * count + answer] = (usual + 1 / count) / 2
  }
  return profile
}
