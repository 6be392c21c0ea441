import type { Guide, Host, RedFlagId } from '../guide/index.js'
import { bars, LEAST_FINDINGS, LEAST_SHARE_OF_TREE, MOST_EXTRA_CHECKS } from './bars.js'
import { differentialOf, sightingsOf } from './differential.js'
import type { Evidence, Setting } from './evidence.js'
import { entropyBits } from './information.js'
import { openChecks } from './next-check.js'
import { logPriors, posterior } from './posterior.js'
import type { Differential, Reading, Step } from './reading.js'
import { treeReach } from './tree-reach.js'
import { type TreeWalk, walkTree } from './tree-walk.js'

/**
 * What the engine makes of a case: a pure function of the guide, the evidence, the date and the place.
 * The same evidence gives the same reading, in whatever order it was given.
 */
export function readCase(guide: Guide, evidence: Evidence, setting: Setting): Reading {
  const cards = cardsOf(guide, evidence)
  const walk = walkTree(guide, evidence)
  if (walk === null) {
    const step: Step = isStopped(guide, cards, evidence) ? { kind: 'red-flag' } : { kind: 'place' }
    return { step, cards, host: null, path: [], differential: [], checksLeft: null }
  }
  const { host, path } = walk
  const priors = logPriors(guide, host, monthOf(setting.on))
  const sightings = sightingsOf(guide, host, evidence)
  const probabilities = posterior(host, priors, sightings)
  const differential = differentialOf(guide, host, priors, probabilities, sightings)
  const plan = isStopped(guide, cards, evidence)
    ? { step: { kind: 'red-flag' } as const, checksLeft: null }
    : planStep(guide, evidence, walk, probabilities, differential, sightings.length)
  return { step: plan.step, cards, host: host.id, path, differential, checksLeft: plan.checksLeft }
}

/** Red flags raised by the words, then by answers, each once. */
function cardsOf(guide: Guide, evidence: Evidence): RedFlagId[] {
  const cards = new Set<RedFlagId>(evidence.redFlags.filter((id) => guide.redFlagNumbers.has(id)))
  for (const finding of evidence.findings) {
    const check = guide.checks[guide.checkNumbers.get(finding.check) ?? -1]
    const raised = check?.answers.find(({ label }) => label === finding.answer)?.redFlag
    const card = raised == null ? undefined : guide.redFlags[raised]
    if (card !== undefined) cards.add(card.id)
  }
  return [...cards].sort()
}

/** Whether a card holds the case: one that ends it, or an emergency that the asker has not yet gone past. */
function isStopped(guide: Guide, cards: readonly RedFlagId[], evidence: Evidence): boolean {
  return cards.some((id) => {
    const card = guide.redFlags[guide.redFlagNumbers.get(id) ?? -1]
    if (card === undefined) return false
    return card.then === 'stop' || (card.level === 'emergency' && !evidence.carriedOn)
  })
}

function planStep(
  guide: Guide, evidence: Evidence, walk: TreeWalk, probabilities: Float64Array, differential: Differential, told: number,
): { step: Step; checksLeft: number | null } {
  const { host, stand } = walk
  const handOver = (because: string): { step: Step; checksLeft: null } => ({
    step: { kind: 'hand-over', because, unsettled: openChecks(guide, host, probabilities, evidence).slice(0, 3).map(({ check }) => check) },
    checksLeft: null,
  })
  if (stand.kind === 'hand over') return handOver(stand.because)

  const [first] = differential
  const leader = first?.problem == null ? undefined : guide.problems[guide.problemNumbers.get(first.problem) ?? -1]
  const passes = first !== undefined && leader !== undefined && first.probability >= bars[leader.cost]
  if (passes && leader !== undefined && (stand.kind === 'problem' || told >= LEAST_FINDINGS)) {
    return { step: { kind: 'conclude', problem: leader.id }, checksLeft: null }
  }

  const next = stand.kind === 'node' ? guide.checks[host.nodes[stand.node]?.check ?? -1] : undefined
  if (stand.kind === 'node' && next !== undefined && treeStillFits(host, stand.node, probabilities)) {
    const left = Math.max(1, Math.round(treeReach(host).checksLeft[stand.node] ?? 1))
    return { step: { kind: 'ask', check: next.id, by: 'tree' }, checksLeft: left }
  }

  const offers = openChecks(guide, host, probabilities, evidence)
  const [best] = offers
  const extra = countAsked(evidence.findings) - countAsked(walk.path.map(({ finding }) => finding))
  if (best !== undefined && extra < MOST_EXTRA_CHECKS) {
    const left = Math.min(MOST_EXTRA_CHECKS - extra, offers.length, Math.max(1, Math.ceil(entropyBits(probabilities))))
    return { step: { kind: 'ask', check: best.check, by: 'gain' }, checksLeft: left }
  }
  return handOver('What you have seen fits more than one cause, and we do not want to guess.')
}

/** Whether the problems that the tree can still reach from a node are worth following, given the evidence so far. */
function treeStillFits(host: Host, node: number, probabilities: Float64Array): boolean {
  const rows = treeReach(host).rows[node]
  if (rows === undefined || rows.size === 0) return true // leads only to a hand-over or to another plant's tree
  let share = 0
  for (const row of rows) share += probabilities[row] ?? 0
  return share >= LEAST_SHARE_OF_TREE
}

function countAsked(findings: Evidence['findings']): number {
  return findings.filter(({ from }) => from === 'asked').length
}

function monthOf(isoDate: string): number {
  return Number(isoDate.slice(5, 7))
}
