import type { Check, Guide, Host, NodeName, Problem, RedFlagId } from '../guide/index.js'
import { bars, earlyBar, LEAST_FINDINGS, LEAST_SHARE_OF_TREE, LEAST_SHARE_OF_WATCH, MOST_CHECKS, MOST_EXTRA_CHECKS, SHORT_PATH } from './bars.js'
import { Belief } from './belief.js'
import { complaintWeights } from './complaint.js'
import { confirmingLook, holdsAfterLooks } from './confirming-look.js'
import { differentialOf } from './differential.js'
import type { CaseState } from './case-state.js'
import type { Evidence, Setting } from './evidence.js'
import { handOverReasons } from './hand-over-reasons.js'
import { type Model, modelOfHost } from './model.js'
import { askable, openChecks } from './open-checks.js'
import { isOutOfSight } from './out-of-sight.js'
import { type PassedOver, passedOver } from './passed-over.js'
import { logPriors } from './priors.js'
import type { Differential, Reading, Step } from './reading.js'
import { lastLook } from './last-looks.js'
import { countAsked, countLooks } from './looks.js'
import { leader, secondLook } from './second-look.js'
import { sightingsOf } from './sightings.js'
import { treeReach } from './tree-reach.js'
import { type TreeWalk, walkTree } from './tree-walk.js'
import { turnsOf } from './turns.js'
import { unsettledChecks } from './unsettled-checks.js'

/**
 * What the engine makes of a case: a pure function of the guide, the evidence, the date and the place.
 * The same evidence gives the same reading, in whatever order it was given.
 */
export function readCase(guide: Guide, evidence: Evidence, setting: Setting): Reading {
  const { step, cards, state } = planCase(guide, evidence, setting)
  if (state === null) return { step, cards, host: null, path: [], differential: [], turns: [], watched: [] }
  const { walk: { host, path }, belief, priors, sightings, shares, open } = state
  const differential = differentialOf(guide, host, belief, priors, shares, sightings)
  const concluded = step.kind === 'conclude' ? step.problem : null
  return {
    step, cards, host: host.id, path, differential,
    turns: concluded === null ? [] : turnsOf(guide, host, belief, priors, sightings, open),
    watched: concluded === null && step.kind !== 'hand-over' ? [] : watchedIn(guide, differential).filter((id) => id !== concluded),
  }
}

/** A case's next step, without what is told of it; `state` is null while the plant is not settled. */
export interface Plan {
  readonly step: Step
  readonly cards: readonly RedFlagId[]
  readonly state: CaseState | null
}

/** Plans the next step of a case: readCase without the reasons, which cost most and only a person reads. */
export function planCase(guide: Guide, evidence: Evidence, setting: Setting): Plan {
  const cards = cardsOf(guide, evidence)
  const isHeld = isStopped(guide, cards, evidence)
  const walk = walkFromEntryOrTop(guide, evidence)
  if (walk === null) return { step: isHeld ? { kind: 'red-flag' } : { kind: 'place' }, cards, state: null }
  const { host } = walk
  const model = modelOfHost(guide, host)
  const entry = standingEntry(evidence, walk)
  const passed = entry === null ? NONE_PASSED : passedOver(host, entry)
  const sightings = sightingsOf(guide, host, evidence)
  const priors = logPriors(
    guide, host, monthOf(setting.on), entry === null ? null : treeReach(host).rows[entry] ?? null,
    complaintWeights(host, model, passed, new Set(sightings.map(({ check }) => host.checks[check] ?? -1))),
    setting.plausible,
  )
  const belief = beliefOf(model).restate(priors, sightings)
  const shares = Float64Array.from(belief.shares())
  const state: CaseState = { guide, evidence, walk, belief, priors, sightings, shares, open: openChecks(guide, host, belief, evidence, passed), passed }
  return { step: isHeld ? { kind: 'red-flag' } : planStep(state), cards, state }
}

const beliefs = new WeakMap<Model, Belief>()

/** One belief a model, used again and again: reading a case is never interrupted, and takes no new room. */
function beliefOf(model: Model): Belief {
  const before = beliefs.get(model)
  if (before !== undefined) return before
  const belief = new Belief(model)
  beliefs.set(model, belief)
  return belief
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

/**
 * Follows the tree from the settled entry. Where that soon ends in a hand-over, the complaint may have been taken for
 * another: then the tree is followed from its top, with what is known, before anyone is sent on.
 */
function walkFromEntryOrTop(guide: Guide, evidence: Evidence): TreeWalk | null {
  const walk = walkTree(guide, evidence)
  const { start } = evidence
  if (walk === null || start === null || start.node === null || walk.host.id !== start.host) return walk
  if (walk.stand.kind !== 'hand over' || walk.path.length > SHORT_PATH || !isCatchAll(guide, walk)) return walk
  const again = walkTree(guide, { ...evidence, start: { host: start.host, node: null } })
  return again === null || again.stand.kind === 'hand over' ? walk : again
}

/**
 * Whether the hand-over is what several answers of its node come to alike, as *none of these* does. One that a single
 * answer or *not sure* leads to was written for it, often with a warning ("do not move the wood"), and must be heard.
 */
function isCatchAll(guide: Guide, { host, path, stand }: TreeWalk): boolean {
  const last = path.at(-1)
  const node = host.nodes.find(({ name }) => name === last?.node)
  const answers = guide.checks[node?.check ?? -1]?.answers
  if (stand.kind !== 'hand over' || node === undefined || answers?.some(({ label }) => label === last?.finding.answer) !== true) return false
  return node.answers.filter((target) => target.kind === 'hand over' && target.because === stand.because).length > 1
}

/** The settled entry's node; null at the top of the tree, once the entry has failed, or on another host. */
function standingEntry({ start }: Evidence, { host, entry }: TreeWalk): number | null {
  if (start === null || start.node === null || start.host !== host.id || entry !== start.node) return null
  const node = host.nodes.findIndex(({ name }) => name === start.node)
  return node < 0 ? null : node
}

const NONE_PASSED: PassedOver = new Map()

function planStep(state: CaseState): Step {
  const { guide, evidence, walk, sightings, shares, open } = state
  const { host, stand } = walk
  if (stand.kind === 'hand over') {
    const last = lastLook(state)
    return last === null ? handOver(state, stand.because) : { kind: 'ask', check: last.id, by: 'last look' }
  }

  const start = evidence.start?.node ?? null
  const ask = stand.kind === 'node' ? guide.checks[host.nodes[stand.node]?.check ?? -1] : undefined
  const isFirst = stand.kind === 'node' && walk.path.length === 0 && isNamed(host, stand.node, start)
  // The look that belongs to the chosen complaint always comes first: it may be there for safety's sake.
  if (ask !== undefined && isFirst) return { kind: 'ask', check: ask.id, by: 'tree' }

  const looks = countLooks(evidence.findings)
  const isSpent = looks >= MOST_CHECKS
  const doubt = isSpent ? null : secondLook(guide, host, state.belief, state.priors, sightings, evidence)
  if (doubt !== null) return { kind: 'ask', check: doubt.check, by: 'second look', again: doubt.again }

  const [row, share] = leader(shares)
  const leading = guide.problems[host.problems[row] ?? -1] ?? null
  const isAtEnd = stand.kind === 'problem' || isSpent
  const passes = (bar: (cost: Problem['cost']) => number): boolean => leading !== null && share >= bar(leading.cost)
  // Nothing is concluded on the complaint alone: it may have been taken for another.
  const conclusion = leading === null || sightings.length === 0 ? null : { kind: 'conclude', problem: leading.id } as const
  if (conclusion !== null && leading !== null) {
    if (isAtEnd ? passes((cost) => bars[cost]) : sightings.length >= LEAST_FINDINGS && passes(earlyBar) && !mustAskFirst(host, stand, leading) && !host.isOfAnyPlant) {
      const confirming = isSpent ? null : confirmingLook(state, leading, row)
      return confirming === null ? conclusion : { kind: 'ask', check: confirming.id, by: 'gain' }
    }
    if (holdsAfterLooks(state, leading, row)) return conclusion
  }
  // A check that may raise a red flag is still asked: it is there for safety's sake.
  if (ask?.answers.some(({ redFlag }) => redFlag !== null) !== true && isOutOfSight(evidence, open)) return handOver(state, handOverReasons['out of sight'])
  if (!isSpent && stand.kind === 'node' && ask !== undefined && treeStillFits(host, stand.node, state.shares) && canChangeOutcome(state, stand.node, ask)) {
    return { kind: 'ask', check: ask.id, by: 'tree' }
  }

  const [best] = askable(open)
  const extra = countAsked(evidence.findings) - countAsked(walk.path.map(({ finding }) => finding))
  if (!isSpent && best !== undefined && extra < MOST_EXTRA_CHECKS) {
    return { kind: 'ask', check: best.check.id, by: 'gain' }
  }
  if (conclusion !== null && passes((cost) => bars[cost])) return conclusion
  return handOver(state, handOverReasons['several causes fit'])
}

/**
 * Whether the tree's next check comes before an early conclusion: where being wrong is costly (a tree felled, a pest to be
 * reported) and one of its answers hands over in words of its own, as a tunnel in the wood does.
 */
function mustAskFirst(host: Host, stand: TreeWalk['stand'], leading: Problem | null): boolean {
  if (stand.kind !== 'node' || leading === null || leading.cost === 'ordinary') return false
  const answers = host.nodes[stand.node]?.answers ?? []
  return answers.some((target) => target.kind === 'hand over' && !answers.some((other) => other !== target && other.kind === 'hand over' && other.because === target.because))
}

function handOver(state: CaseState, because: string): Step {
  const sample = state.open.find(({ check }) => check.effort === 'send a sample')
  return { kind: 'hand-over', because, unsettled: unsettledChecks(state).map(({ id }) => id), sample: sample?.check.id ?? null }
}

/** Whether the problems that the tree can still reach from a node are worth following, given the evidence so far. */
function treeStillFits(host: Host, node: number, shares: Float64Array): boolean {
  const rows = treeReach(host).rows[node]
  if (rows === undefined || rows.size === 0) return true // leads only to a hand-over or to another plant's tree
  let share = 0
  for (const row of rows) share += shares[row] ?? 0
  return share >= LEAST_SHARE_OF_TREE
}

/**
 * Whether asking a node's check could change anything: its answers tell problems apart, or one of them leads out of the
 * reckoning (to a hand-over or another host's tree), or raises a red flag.
 */
function canChangeOutcome({ walk: { host }, open }: CaseState, node: number, check: Check): boolean {
  if (open.some((offer) => offer.check === check)) return true
  if (check.answers.some(({ redFlag }) => redFlag !== null)) return true
  return host.nodes[node]?.answers.some(({ kind }) => kind === 'hand over' || kind === 'host') ?? false
}

/** Watch problems with a share that cannot be passed over, likeliest first. */
function watchedIn(guide: Guide, differential: Differential): Problem['id'][] {
  return differential.flatMap(({ problem, probability }) => {
    const one = problemNamed(guide, problem)
    return one?.watch != null && probability >= LEAST_SHARE_OF_WATCH ? [one.id] : []
  })
}

function problemNamed(guide: Guide, id: string | null): Problem | null {
  return id === null ? null : guide.problems[guide.problemNumbers.get(id) ?? -1] ?? null
}

function isNamed(host: Host, node: number, name: NodeName | null): boolean {
  return name !== null && host.nodes[node]?.name === name
}

function monthOf(isoDate: string): number {
  return Number(isoDate.slice(5, 7))
}
