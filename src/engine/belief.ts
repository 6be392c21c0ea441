import type { Model } from './model.js'

/** A row with less than this share no longer takes part in choosing checks; it still takes part in Bayes' rule. */
const LEAST_LIVE_SHARE = 1e-6

/**
 * Bayes' rule over a model, kept up answer by answer: ln prior + Σ ln P(answer | row), then normalised.
 * All room is taken at the start; seeing an answer and weighing a check allocate nothing.
 *
 * Checks of one group see the same sign, so they must not count twice. Within a group, each answer speaks for or
 * against a row by ln P(answer | row) − ln P(answer); of all that speak for it only the strongest counts, and of all
 * that speak against it only the strongest. Hearing the same thing again therefore changes nothing.
 */
export class Belief {
  readonly model: Model
  readonly #logs: Float64Array
  /** Weight of each row when checks are weighed. */
  readonly #rowShares: Float64Array
  readonly #shares: Float64Array
  readonly #live: Int32Array
  #liveRows = 0
  readonly #for: Float64Array
  readonly #against: Float64Array
  readonly #groupHeard: Uint8Array
  readonly #joint: Float64Array
  readonly #answerShares: Float64Array
  readonly #focus: number
  #isSettled = false

  /**
   * @param focus power to which P(problem) is raised when checks are weighed; 1 is plain expected gain, more lets
   *   faint problems have less say in what is asked. Bayes' rule itself is untouched.
   */
  constructor(model: Model, focus = 1) {
    this.model = model
    this.#focus = focus
    const mostAnswers = Math.max(1, ...model.checks.map(({ answers }) => answers))
    this.#logs = new Float64Array(model.rows)
    this.#rowShares = new Float64Array(model.rows)
    this.#shares = new Float64Array(model.problems)
    this.#live = new Int32Array(model.rows)
    this.#for = new Float64Array(model.groups * model.rows)
    this.#against = new Float64Array(model.groups * model.rows)
    this.#groupHeard = new Uint8Array(model.groups)
    this.#joint = new Float64Array(Math.max(2, model.problems) * mostAnswers)
    this.#answerShares = new Float64Array(mostAnswers)
  }

  /**
   * Forgets everything but the prior.
   * @param logPriors ln prior of each problem, the last *something not listed here*
   */
  start(logPriors: Float64Array): void {
    const { rows, problemOfRow, logRowShare } = this.model
    for (let row = 0; row < rows; row++) this.#logs[row] = (logPriors[problemOfRow[row] ?? 0] ?? 0) + (logRowShare[row] ?? 0)
    this.#for.fill(0)
    this.#against.fill(0)
    this.#groupHeard.fill(0)
    this.#isSettled = false
  }

  /** Forgets everything but the prior and these answers, whatever was reckoned before; gives itself back. */
  restate(logPriors: Float64Array, sightings: readonly { readonly check: number; readonly answer: number }[]): this {
    this.start(logPriors)
    for (const { check, answer } of sightings) this.see(check, answer)
    return this
  }

  /** Takes in one answer. The order of answers does not matter, beyond rounding. */
  see(check: number, answer: number): void {
    const { rows } = this.model
    const one = this.model.checks[check]
    if (one === undefined || answer < 0 || answer >= one.answers) return
    const { answers, log, group } = one
    this.#isSettled = false
    if (group < 0) {
      for (let row = 0; row < rows; row++) this.#logs[row] = (this.#logs[row] ?? 0) + (log[row * answers + answer] ?? 0)
      return
    }
    this.#groupHeard[group] = 1
    const usual = one.background[answer] ?? 0
    for (let row = 0; row < rows; row++) {
      const cell = group * rows + row
      const weight = (log[row * answers + answer] ?? 0) - usual
      const before = (this.#for[cell] ?? 0) + (this.#against[cell] ?? 0)
      if (weight > (this.#for[cell] ?? 0)) this.#for[cell] = weight
      if (weight < (this.#against[cell] ?? 0)) this.#against[cell] = weight
      this.#logs[row] = (this.#logs[row] ?? 0) + (this.#for[cell] ?? 0) + (this.#against[cell] ?? 0) - before
    }
  }

  /** P(problem) now, summing to 1. The array is the belief's own and changes with the next answer. */
  shares(): Float64Array {
    if (!this.#isSettled) this.#settle()
    return this.#shares
  }

  /**
   * Expected information gain of asking a check, in bits: H(answer) − Σ P(problem) H(answer | problem).
   * 0 for a check whose group has been heard: it would see the same sign again.
   */
  gainBits(check: number): number {
    if (!this.#isSettled) this.#settle()
    const one = this.model.checks[check]
    if (one === undefined || (one.group >= 0 && this.#groupHeard[one.group] === 1)) return 0
    const { answers, share, orderliness } = one
    const mixed = this.#answerShares.fill(0, 0, answers)
    const hasOneRowEach = this.model.rows === this.model.problems
    let nats = 0
    if (hasOneRowEach) {
      for (let place = 0; place < this.#liveRows; place++) {
        const row = this.#live[place] ?? 0
        const weight = this.#rowShares[row] ?? 0
        for (let answer = 0; answer < answers; answer++) mixed[answer] = (mixed[answer] ?? 0) + weight * (share[row * answers + answer] ?? 0)
        nats += weight * (orderliness[row] ?? 0)
      }
    } else {
      const joint = this.#joint.fill(0, 0, this.model.problems * answers)
      const [live, rowShares, problemOfRow] = [this.#live, this.#rowShares, this.model.problemOfRow]
      for (let place = 0; place < this.#liveRows; place++) {
        const row = live[place] ?? 0
        const weight = rowShares[row] ?? 0
        const from = row * answers
        const to = (problemOfRow[row] ?? 0) * answers
        for (let answer = 0; answer < answers; answer++) joint[to + answer] = (joint[to + answer] ?? 0) + weight * (share[from + answer] ?? 0)
      }
      for (let problem = 0; problem < this.model.problems; problem++) {
        let total = 0
        for (let answer = 0; answer < answers; answer++) {
          const part = joint[problem * answers + answer] ?? 0
          if (part <= 0) continue
          total += part
          mixed[answer] = (mixed[answer] ?? 0) + part
          nats += part * Math.log(part)
        }
        if (total > 0) nats -= total * Math.log(total)
      }
    }
    for (let answer = 0; answer < answers; answer++) {
      const part = mixed[answer] ?? 0
      if (part > 0) nats -= part * Math.log(part)
    }
    return Math.max(0, nats / Math.LN2)
  }

  /**
   * Expected gain of asking a check in bits between two problems alone, as if it were surely one of them; at most 1.
   * Which problems have a say in what is asked (`focus`) does not touch it. 0 for a check whose group has been heard.
   */
  gainBetween(check: number, first: number, second: number): number {
    if (!this.#isSettled) this.#settle()
    const one = this.model.checks[check]
    const [firstShare, secondShare] = [this.#shares[first] ?? 0, this.#shares[second] ?? 0]
    if (one === undefined || (one.group >= 0 && this.#groupHeard[one.group] === 1) || firstShare <= 0 || secondShare <= 0) return 0
    const { answers, share } = one
    const joint = this.#joint.fill(0, 0, 2 * answers)
    let [firstTotal, secondTotal] = [0, 0]
    for (let row = 0; row < this.model.rows; row++) {
      const problem = this.model.problemOfRow[row] ?? 0
      if (problem !== first && problem !== second) continue
      const to = problem === first ? 0 : answers
      const weight = this.#rowShares[row] ?? 0
      if (problem === first) firstTotal += weight
      else secondTotal += weight
      for (let answer = 0; answer < answers; answer++) joint[to + answer] = (joint[to + answer] ?? 0) + weight * (share[row * answers + answer] ?? 0)
    }
    const odds = firstShare / (firstShare + secondShare)
    if (odds >= 1 || odds <= 0 || firstTotal <= 0 || secondTotal <= 0) return 0
    let nats = -odds * Math.log(odds) - (1 - odds) * Math.log(1 - odds)
    for (let answer = 0; answer < answers; answer++) {
      const ofFirst = odds * (joint[answer] ?? 0) / firstTotal
      const ofSecond = (1 - odds) * (joint[answers + answer] ?? 0) / secondTotal
      if (ofFirst > 0) nats += ofFirst * Math.log(ofFirst / (ofFirst + ofSecond))
      if (ofSecond > 0) nats += ofSecond * Math.log(ofSecond / (ofFirst + ofSecond))
    }
    return Math.max(0, nats / Math.LN2)
  }

  #settle(): void {
    const { rows, problemOfRow } = this.model
    let most = -Infinity
    for (let row = 0; row < rows; row++) most = Math.max(most, this.#logs[row] ?? 0)
    let sum = 0
    for (let row = 0; row < rows; row++) {
      const share = Math.exp((this.#logs[row] ?? 0) - most)
      this.#rowShares[row] = share
      sum += share
    }
    this.#shares.fill(0)
    this.#liveRows = 0
    for (let row = 0; row < rows; row++) {
      const share = (this.#rowShares[row] ?? 0) / sum
      this.#rowShares[row] = share
      const problem = problemOfRow[row] ?? 0
      this.#shares[problem] = (this.#shares[problem] ?? 0) + share
    }
    let focused = 1
    if (this.#focus !== 1) {
      focused = 0
      for (const share of this.#shares) focused += share ** this.#focus
    }
    for (let row = 0; row < rows; row++) {
      if (this.#focus !== 1) {
        const share = this.#shares[problemOfRow[row] ?? 0] ?? 0
        if (share > 0) this.#rowShares[row] = (this.#rowShares[row] ?? 0) * share ** (this.#focus - 1) / focused
      }
      if ((this.#rowShares[row] ?? 0) < LEAST_LIVE_SHARE) continue
      this.#live[this.#liveRows] = row
      this.#liveRows += 1
    }
    this.#isSettled = true
  }
}
