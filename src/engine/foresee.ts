import { type Guide, NOT_SURE } from '../guide/index.js'
import { MOST_CHECKS } from './bars.js'
import { type Evidence, type Setting, withFinding } from './evidence.js'
import { modelOfHost } from './model.js'
import { readCase } from './read-case.js'
import type { Reading } from './reading.js'

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
export function checksToCome(guide: Guide, evidence: Evidence, setting: Setting, reading: Reading): ChecksToCome | null {
  if (reading.step.kind !== 'ask') return null
  let least = MOST_CHECKS
  let most = 1
  const play = (now: Evidence, here: Reading, chance: number, asked: number): void => {
    if (here.step.kind !== 'ask' || asked >= MOST_CHECKS) {
      least = Math.min(least, asked)
      most = Math.max(most, asked)
      return
    }
    const { check } = here.step
    const [likeliest, ...others] = likelyAnswers(guide, here)
    for (const one of likeliest === undefined ? [] : [likeliest, ...others]) {
      const joint = chance * one.chance
      if (one !== likeliest && joint < LEAST_CHANCE) continue
      const next = { ...now, findings: withFinding(now.findings, { check, answer: one.answer, from: 'asked' }) }
      play(next, readCase(guide, next, setting), joint, asked + 1)
    }
  }
  play(evidence, reading, 1, 0)
  return { least, most }
}

/** The answers of the check that is asked, likeliest first, with *not sure* among them. */
function likelyAnswers(guide: Guide, { step, host: hostId, differential }: Reading): { answer: string; chance: number }[] {
  const check = step.kind === 'ask' ? guide.checks[guide.checkNumbers.get(step.check) ?? -1] : undefined
  const host = guide.hosts[guide.hostNumbers.get(hostId ?? '') ?? -1]
  if (check === undefined || host === undefined) return []
  const model = modelOfHost(guide, host).checks[host.checks.indexOf(check.number)]
  const shares = differential.map(({ problem, probability }) => ({
    row: problem === null ? host.problems.length : host.problems.indexOf(guide.problemNumbers.get(problem) ?? -1), probability,
  }))
  const answers = check.answers.map(({ label }, answer) => {
    let chance = model === undefined ? 1 / check.answers.length : 0
    if (model !== undefined) for (const { row, probability } of shares) chance += probability * (model.share[row * model.answers + answer] ?? 0)
    return { answer: label, chance: (1 - UNSURE) * chance }
  })
  return [...answers, { answer: NOT_SURE, chance: UNSURE }].sort((a, b) => b.chance - a.chance)
}
