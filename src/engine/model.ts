import type { Guide, Host } from '../guide/index.js'
import { effortWeights } from './bars.js'

/** One check as the reckoning sees it. */
export interface CheckModel {
  readonly answers: number
  /** ln P(answer | row), row by row. */
  readonly log: Float64Array
  /** P(answer | row), row by row. */
  readonly share: Float64Array
  /** Σ_a P ln P of each row: minus its entropy, in nats. */
  readonly orderliness: Float64Array
  /** ln P(answer) over all rows at the start: the measure of what an answer says for or against within a group. */
  readonly background: Float64Array
  /** Trouble of the look; gain is divided by it. */
  readonly effort: number
  /** Number of the group of checks that see the same sign, or -1. */
  readonly group: number
}

/**
 * What the reckoning needs to know, as numbers alone. A row is one form that a problem takes; a problem of a written
 * guide has one row, a problem learnt from cases may have many. The last problem is *something not listed here*.
 */
export interface Model {
  readonly problems: number
  readonly rows: number
  readonly problemOfRow: Int32Array
  /** ln of a row's share within its problem. */
  readonly logRowShare: Float64Array
  readonly checks: readonly CheckModel[]
  readonly groups: number
}

/**
 * Makes a check ready for reckoning.
 * @param log ln P(answer | row), row by row
 * @param rowWeights share of each row at the start, for the background; they need not sum to 1
 */
export function checkModel(log: Float64Array, rowWeights: Float64Array, effort: number, group = -1): CheckModel {
  const rows = rowWeights.length
  const answers = log.length / rows
  const share = log.map(Math.exp)
  const orderliness = new Float64Array(rows)
  const background = new Float64Array(answers)
  let total = 0
  for (const weight of rowWeights) total += weight
  for (let row = 0; row < rows; row++) {
    for (let answer = 0; answer < answers; answer++) {
      const cell = row * answers + answer
      orderliness[row] = (orderliness[row] ?? 0) + (share[cell] ?? 0) * (log[cell] ?? 0)
      background[answer] = (background[answer] ?? 0) + (rowWeights[row] ?? 0) / total * (share[cell] ?? 0)
    }
  }
  return { answers, log, share, orderliness, background: background.map(Math.log), effort, group }
}

/**
 * P(answer) of a written guide's check, which has one row a problem.
 * @param shares P(problem) by row
 */
export function chanceOfAnswer({ answers, share }: CheckModel, answer: number, shares: Float64Array): number {
  return shares.reduce((sum, ofRow, row) => sum + ofRow * (share[row * answers + answer] ?? 0), 0)
}

const known = new WeakMap<Host, Model>()

/** The model of a host of the guide: one row a problem, then *something not listed here*. Made once a host. */
export function modelOfHost(guide: Guide, host: Host): Model {
  const before = known.get(host)
  if (before !== undefined) return before
  const rows = host.problems.length + 1
  const weights = new Float64Array(rows)
  weights.set(host.commonness)
  const model: Model = {
    problems: rows,
    rows,
    problemOfRow: Int32Array.from({ length: rows }, (_, row) => row),
    logRowShare: new Float64Array(rows),
    checks: host.logLikelihood.map((log, index) => {
      const check = guide.checks[host.checks[index] ?? -1]
      return checkModel(log, weights, effortWeights[check?.effort ?? 'glance'], host.signGroups[index] ?? -1)
    }),
    groups: Math.max(-1, ...host.signGroups) + 1,
  }
  known.set(host, model)
  return model
}
