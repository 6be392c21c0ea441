import type { DescribedCase, DescribedCases } from './described-cases.js'
import { fitLooseness, type WholeProfile } from './looseness.js'
import { checkModel, type Model } from './model.js'
import { fitPooling } from './pooling.js'

export interface LearnOptions {
  /** How far a new plant may differ from a case it resembles: share of each answer taken from the problem's whole profile; one for all checks or one each. */
  readonly looseness: number | Float64Array | 'fit'
  /** The problem's whole profile counts as this many cases of it. */
  readonly profileCases: number
  /** The background counts as this many cases in the profile of each problem; fitted, each check gets its own weight. */
  readonly smoothing: number | 'fit'
  /**
   * Chance that a person picks a wrong answer at a check: one for all, or several, when people differ and who misreads much is
   * not known. One odd answer then speaks for a person who misreads, so that a case that fits in all but one is trusted less
   * than one that fits in all.
   */
  readonly misread: number | readonly MisreadRate[]
  /** Prior share of *something not listed here*. */
  readonly notListed: number
}

/** One way of answering: how often it misreads, and how common it is. */
export interface MisreadRate {
  readonly rate: number
  /** Share of all cases that are answered so; the shares of all rates sum to 1. */
  readonly share: number
}

export interface Learnt {
  readonly model: Model
  /** ln prior of each problem, the last *something not listed here*. */
  readonly logPriors: Float64Array
  /** ln P(answer | problem) by check, row by row, with the not-listed row: the profiles alone, as a written guide has them; at the first misread rate. */
  readonly profiles: readonly Float64Array[]
  /** The looseness of each check, as given or fitted. */
  readonly looseness: Float64Array
}

/**
 * Learns a model from described cases. Each problem gets one row for its whole profile and one for every different case of it: the
 * forms in which it has been seen. Rows keep together what is seen together, which a profile alone cannot. A cell that was not
 * recorded is skipped: it is neither a value nor filled in, and how often a check was recorded is taken over all
 * problems alike. Without cases nothing is left but the profiles.
 * (A mixture of kernels on cases; kernels for discrete data: Aitchison & Aitken 1976, Biometrika 63:413-420, from memory.)
 * With several misread rates all rows come once for each, so that P(answers) = Σ share × Π P(answer | form, rate): the rate is
 * unknown and the same for all answers of a case (in the spirit of the beta-binomial: Skellam 1948, Journal of the Royal
 * Statistical Society B 10:257-261, from memory).
 * @throws when no misread rate is given
 */
export function learnModel({ answers, problems, cases }: DescribedCases, options: LearnOptions): Learnt {
  const perProblem = new Float64Array(problems)
  for (const { problem } of cases) perProblem[problem] = (perProblem[problem] ?? 0) + 1
  const forms = formsOf(cases)
  const rates = typeof options.misread === 'number' ? [{ rate: options.misread, share: 1 }] : options.misread
  if (rates.length === 0) throw new Error('A model needs at least one misread rate; 0.03 is usual.')
  // Rows under one misread rate: whole profiles, forms, not listed.
  const block = problems + forms.length + 1
  const rows = rates.length * block
  const problemOfRow = new Int32Array(rows)
  const logRowShare = new Float64Array(rows)
  const rowWeights = new Float64Array(rows)
  const putRow = (row: number, problem: number, weight: number): void => {
    const count = perProblem[problem] ?? 0
    rates.forEach(({ share }, place) => {
      const at = place * block + row
      problemOfRow[at] = problem
      logRowShare[at] = Math.log(share * weight / (count + options.profileCases))
      rowWeights[at] = count / cases.length * Math.exp(logRowShare[at] ?? 0)
    })
  }
  for (let problem = 0; problem < problems; problem++) putRow(problem, problem, options.profileCases)
  forms.forEach(({ problem, times }, place) => { putRow(problems + place, problem, times) })
  rates.forEach(({ share }, place) => {
    problemOfRow[(place + 1) * block - 1] = problems
    logRowShare[(place + 1) * block - 1] = Math.log(share)
  })

  const profiles: Float64Array[] = []
  const wholes = answers.map((count, check) => profileOf(check, count, problems, cases, options.smoothing))
  const looseness = options.looseness === 'fit'
    ? fitLooseness({ answers, problems, cases }, wholes, options.profileCases, 0.35)
    : typeof options.looseness === 'number' ? new Float64Array(answers.length).fill(options.looseness) : options.looseness
  const checks = answers.map((count, check) => {
    const profile = wholes[check]?.shares ?? new Float64Array()
    const loose = looseness[check] ?? 1
    const table = new Float64Array(rows * count)
    const put = (row: number, share: (answer: number) => number): void => {
      for (let answer = 0; answer < count; answer++) {
        const clean = share(answer)
        rates.forEach(({ rate }, place) => { table[(place * block + row) * count + answer] = Math.log((1 - rate) * clean + rate / count) })
      }
    }
    for (let problem = 0; problem <= problems; problem++) {
      put(problem < problems ? problem : block - 1, (answer) => profile[problem * count + answer] ?? 0)
    }
    profiles.push(Float64Array.from([...table.slice(0, problems * count), ...table.slice((block - 1) * count, block * count)]))
    forms.forEach(({ problem, answers: seen }, place) => {
      const own = seen[check] ?? -1
      put(problems + place, (answer) => {
        const whole = profile[problem * count + answer] ?? 0
        return own < 0 ? whole : (1 - loose) * (answer === own ? 1 : 0) + loose * whole
      })
    })
    const recorded = cases.filter(({ answers: seen }) => (seen[check] ?? -1) >= 0).length
    // A check that often goes unanswered is that much more trouble to ask.
    return checkModel(table, rowWeights, (cases.length + 2) / (recorded + 1))
  })
  const logPriors = Float64Array.from({ length: problems + 1 }, (_, problem) =>
    Math.log(problem === problems ? options.notListed : (1 - options.notListed) * (perProblem[problem] ?? 0) / cases.length))
  return { model: { problems: problems + 1, rows, problemOfRow, logRowShare, checks, groups: 0 }, logPriors, profiles, looseness }
}

/** The different cases, each with how often it came: cases alike in all share one row. */
function formsOf(cases: readonly DescribedCase[]): (DescribedCase & { readonly times: number })[] {
  const forms = new Map<string, DescribedCase & { readonly times: number }>()
  for (const one of cases) {
    const key = `${one.problem}: ${one.answers.join(' ')}`
    forms.set(key, { ...one, times: (forms.get(key)?.times ?? 0) + 1 })
  }
  return [...forms.values()]
}

/** P(answer | problem) from counts, smoothed by the background; the last row, *not listed*, is halfway from it to even odds. */
function profileOf(
  check: number, count: number, problems: number, cases: readonly DescribedCase[], smoothing: number | 'fit',
): WholeProfile {
  const seen = new Float64Array(problems * count)
  const recorded = new Float64Array(problems)
  const usual = new Float64Array(count).fill(1)
  let total = count
  for (const { problem, answers } of cases) {
    const answer = answers[check] ?? -1
    if (answer < 0) continue
    seen[problem * count + answer] = (seen[problem * count + answer] ?? 0) + 1
    recorded[problem] = (recorded[problem] ?? 0) + 1
    usual[answer] = (usual[answer] ?? 0) + 1
    total += 1
  }
  for (let answer = 0; answer < count; answer++) usual[answer] = (usual[answer] ?? 0) / total
  const pooling = smoothing === 'fit' ? fitPooling(seen, usual) : smoothing
  const shares = new Float64Array((problems + 1) * count)
  for (let answer = 0; answer < count; answer++) {
    for (let problem = 0; problem < problems; problem++) {
      shares[problem * count + answer] = ((seen[problem * count + answer] ?? 0) + pooling * (usual[answer] ?? 0)) / ((recorded[problem] ?? 0) + pooling)
    }
    shares[problems * count + answer] = ((usual[answer] ?? 0) + 1 / count) / 2
  }
  return { shares, recorded, pooling }
}
