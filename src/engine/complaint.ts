import type { Host } from '../guide/index.js'
import { COMPLAINT_MISTAKEN } from './bars.js'
import type { Model } from './model.js'
import type { PassedOver } from './passed-over.js'

/**
 * How well each row fits what the complaint itself has said, in the model's order: the product, over the checks passed
 * over, of P(an answer that leads to the complaint | row), with room for a complaint taken for another.
 * @param answered numbers of checks that the asker has answered apart; those speak for themselves
 */
export function complaintWeights(host: Host, model: Model, passed: PassedOver, answered: ReadonlySet<number>): Float64Array {
  const weights = new Float64Array(model.rows).fill(1)
  for (const [number, answers] of passed) {
    const one = model.checks[host.checks.indexOf(number)]
    if (one === undefined || answered.has(number) || answers.size === 0) continue
    for (let row = 0; row < model.rows; row++) {
      let share = 0
      for (const answer of answers) share += one.share[row * one.answers + answer] ?? 0
      weights[row] = (weights[row] ?? 1) * ((1 - COMPLAINT_MISTAKEN) * share + COMPLAINT_MISTAKEN * answers.size / one.answers)
    }
  }
  return weights
}
