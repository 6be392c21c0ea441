import { type Guide, type Host, NOT_SURE } from '../guide/index.js'
import { brierScore, logLoss } from './calibration.js'
import { type Finding, withFinding } from './evidence.js'
import { modelOfHost } from './model.js'
import { drawPlace, type Random } from './random.js'
import type { Reading } from './reading.js'
import { readCase } from './read-case.js'
import { walkTree } from './tree-walk.js'

/** A made-up case: a true problem of the host, and what its plant shows at every check. */
export interface MadeCase {
  /** Row of the true problem among the host's. */
  readonly row: number
  /** ISO date, in the problem's season. */
  readonly on: string
  /** Answer number at each check of the host. */
  readonly answers: Int32Array
}

/** How a made-up case went from the top of the tree. */
export interface Played {
  readonly made: MadeCase
  /** Ids of the checks asked, in order. */
  readonly asked: readonly string[]
  /** Row of the concluded problem; -1 when it was handed over. */
  readonly concluded: number
  /** Row that led at the end, concluded or not; -1 for *something not listed here*. */
  readonly leading: number
  readonly claimed: number
  /** True when the tree led on to another host, which this host's report cannot judge. */
  readonly isPassedOn: boolean
  readonly brier: number
  readonly logLoss: number
  /** Checks that the authored tree alone would have asked, and the row it ends in (-1 for a hand-over). */
  readonly treeChecks: number
  readonly treeEnd: number
}

/** Draws a problem by how common it is, a day in its season, and an answer to every check by its profile. */
export function makeCase(guide: Guide, host: Host, random: Random): MadeCase {
  const model = modelOfHost(guide, host)
  const row = drawPlace(host.commonness, 0, host.problems.length, random)
  const months = guide.problems[host.problems[row] ?? -1]?.months ?? []
  const month = months[Math.floor(random() * months.length)] ?? 1 + Math.floor(random() * 12)
  return {
    row,
    on: `2026-${String(month).padStart(2, '0')}-15`,
    answers: Int32Array.from(model.checks, ({ share, answers }) => drawPlace(share, row * answers, answers, random)),
  }
}

/** Plays a made-up case from the top of the host's tree; a check of another host is answered *not sure*. */
export function playCase(guide: Guide, host: Host, made: MadeCase): Played {
  const start = { host: host.id, node: null }
  let findings: readonly Finding[] = []
  const asked: string[] = []
  const answerOf = (id: string): string => {
    const number = guide.checkNumbers.get(id) ?? -1
    const place = host.checks.indexOf(number)
    return guide.checks[number]?.answers[made.answers[place] ?? -1]?.label ?? NOT_SURE
  }
  let reading: Reading
  for (;;) {
    reading = readCase(guide, { redFlags: [], carriedOn: true, start, findings }, { on: made.on, district: null })
    if (reading.step.kind !== 'ask' || asked.length > 40) break
    asked.push(reading.step.check)
    findings = withFinding(findings, { check: reading.step.check, answer: answerOf(reading.step.check), from: 'asked' })
  }
  const rowOf = (id: string | null): number => (id === null ? -1 : host.problems.indexOf(guide.problemNumbers.get(id) ?? -1))
  const shares = new Float64Array(host.problems.length + 1)
  for (const { problem, probability } of reading.differential) {
    const row = rowOf(problem)
    shares[row < 0 ? host.problems.length : row] = probability
  }
  const [first] = reading.differential
  const tree = treeAlone(guide, host, answerOf)
  return {
    made, asked,
    concluded: reading.step.kind === 'conclude' ? rowOf(reading.step.problem) : -1,
    isPassedOn: reading.host !== host.id,
    leading: rowOf(first?.problem ?? null), claimed: first?.probability ?? 0,
    brier: brierScore(shares, made.row), logLoss: logLoss(shares, made.row),
    treeChecks: tree.checks, treeEnd: tree.end < 0 ? -1 : host.problems.indexOf(tree.end),
  }
}

/** The authored tree followed by itself: number of checks and the problem it ends in, -1 for none. */
function treeAlone(guide: Guide, host: Host, answerOf: (check: string) => string): { checks: number; end: number } {
  let findings: readonly Finding[] = []
  for (;;) {
    const walk = walkTree(guide, { redFlags: [], carriedOn: true, start: { host: host.id, node: null }, findings })
    if (walk === null || walk.stand.kind !== 'node') {
      return { checks: findings.length, end: walk?.stand.kind === 'problem' ? walk.stand.problem : -1 }
    }
    const check = guide.checks[walk.host.nodes[walk.stand.node]?.check ?? -1]
    if (check === undefined || findings.some((one) => one.check === check.id)) return { checks: findings.length, end: -1 }
    findings = withFinding(findings, { check: check.id, answer: answerOf(check.id), from: 'asked' })
  }
}
