import { type CheckId, type Guide, NOT_SURE } from '../guide/index.js'
import { MOST_CHECKS } from './bars.js'
import { type Evidence, type Setting, withFinding } from './evidence.js'
import { chanceOfAnswer } from './model.js'
import { type Plan, planCase } from './read-case.js'

/** How many checks are still to come, the one that is asked now included. */
export interface ChecksToCome {
  readonly least: number
  readonly most: number
}

/** Answers less likely than this, all in all, are not foreseen. Our judgement. */
const LEAST_CHANCE = 0.1

/** Share of checks that are answered *not sure*, until measured. Our judgement; just enough to be foreseen once. */
const UNSURE = 0.12

/**
 * How many checks are still to come, by playing the case on with every answer that is likely; null where nothing is
 * asked. So one is the last exactly where each likely answer, *not sure* among them, ends the case. Once a course has
 * become unlikely as a whole, it is played to its end by its likeliest answers alone.
 */
export function checksToCome(guide: Guide, evidence: Evidence, setting: Setting): ChecksToCome | null {
  const first = planCase(guide, evidence, setting)
  if (first.step.kind !== 'ask') return null
  let least = MOST_CHECKS
  let most = 1
  const play = (now: Evidence, here: Plan, chance: number, asked: number): void => {
    const { step } = here
    if (step.kind !== 'ask' || asked >= MOST_CHECKS) {
      least = Math.min(least, asked)
      most = Math.max(most, asked)
      return
    }
    for (const [place, one] of likelyAnswers(guide, step.check, here).entries()) {
      const joint = chance * one.chance
      if (place > 0 && joint < LEAST_CHANCE) continue
      // A card that an answer raises does not end the questions: most askers carry on.
      const next = { ...now, carriedOn: true, findings: withFinding(now.findings, { check: step.check, answer: one.answer, from: 'asked' }) }
      play(next, planCase(guide, next, setting), joint, asked + 1)
    }
  }
  play(evidence, first, 1, 0)
  return { least, most }
}

/** The answers of the check that is asked, likeliest first, with *not sure* among them. */
function likelyAnswers(guide: Guide, asked: CheckId, { state }: Plan): { answer: string; chance: number }[] {
  const check = guide.checks[guide.checkNumbers.get(asked) ?? -1]
  if (check === undefined || state === null) return []
  const { walk: { host }, belief, shares } = state
  const model = belief.model.checks[host.checks.indexOf(check.number)]
  const answers = check.answers.map(({ label }, answer) => {
    const chance = model === undefined ? 1 / check.answers.length : chanceOfAnswer(model, answer, shares)
    return { answer: label, chance: (1 - UNSURE) * chance }
  })
  return [...answers, { answer: NOT_SURE, chance: UNSURE }].sort((a, b) => b.chance - a.chance)
}
