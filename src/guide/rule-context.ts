import type { Draft, HostDraft, NodeDraft } from './drafts.js'
import type { GuideError, GuideErrorCode, GuideWarningCode } from './guide-error.js'
import { findNode, type LinkedGuide, type LinkedNode, nodeOfTarget, waysOut } from './link.js'
import type { Place } from './source-file.js'

/** What a rule reports; the context adds the severity. */
export interface Fault<Code> {
  readonly code: Code
  readonly message: string
  readonly at: readonly [Place, ...Place[]]
  readonly nearest?: readonly string[]
  /** For a warning: the file that may accept it with a reason. */
  readonly of?: Draft
}

export type Rule = (context: RuleContext) => void

/** What every rule works with: the linked guide, today's date, and work that several rules share, done once and only when asked for. */
export class RuleContext {
  readonly guide: LinkedGuide
  /** ISO date. */
  readonly today: string
  readonly #report: (error: GuideError) => void
  #reachable: ReadonlySet<NodeDraft> | null = null
  readonly #problemsFrom = new Map<NodeDraft, ReadonlySet<string>>()

  constructor(guide: LinkedGuide, today: string, report: (error: GuideError) => void) {
    this.guide = guide
    this.today = today
    this.#report = report
  }

  error(fault: Fault<GuideErrorCode>): void {
    this.#report({ severity: 'error', code: fault.code, message: fault.message, at: fault.at, nearest: fault.nearest ?? [] })
  }

  /** Reports a warning unless the file it is about accepts that warning with a reason. */
  warn(fault: Fault<GuideWarningCode>): void {
    if (fault.of?.accepts.some(({ warning }) => warning.value === fault.code)) return
    this.#report({ severity: 'warning', code: fault.code, message: fault.message, at: fault.at, nearest: fault.nearest ?? [] })
  }

  /** Every node of every host. */
  nodes(): LinkedNode[] {
    return [...this.guide.hosts.values()].flatMap((host) => host.nodes.map((node) => ({ host, node })))
  }

  /** Nodes one step on from a node, by any answer or *not sure*. */
  nextNodes({ host, node }: LinkedNode): LinkedNode[] {
    return waysOut(this.guide, node).flatMap(({ target }) => nodeOfTarget(this.guide, host, target) ?? [])
  }

  /** Nodes that a case can come to: from each host's start, from every entry, and across from other hosts' trees. */
  reachable(): ReadonlySet<NodeDraft> {
    if (this.#reachable !== null) return this.#reachable
    const seen = new Set<NodeDraft>()
    const open: LinkedNode[] = []
    for (const host of this.guide.hosts.values()) {
      const start = findNode(host, host.start.value)
      if (start !== null) open.push(start)
      for (const node of host.nodes) if (node.entry.length > 0) open.push({ host, node })
    }
    for (let here = open.pop(); here !== undefined; here = open.pop()) {
      if (seen.has(here.node)) continue
      seen.add(here.node)
      open.push(...this.nextNodes(here))
    }
    this.#reachable = seen
    return seen
  }

  /** Names of the problems of the node's own host that some path from this node ends in. Safe on cycles. */
  problemsFrom(host: HostDraft, node: NodeDraft): ReadonlySet<string> {
    const known = this.#problemsFrom.get(node)
    if (known !== undefined) return known
    const found = new Set<string>()
    const seen = new Set<NodeDraft>()
    const open: LinkedNode[] = [{ host, node }]
    for (let here = open.pop(); here !== undefined; here = open.pop()) {
      if (seen.has(here.node)) continue
      seen.add(here.node)
      for (const { target } of waysOut(this.guide, here.node)) {
        if (target.kind === 'problem') found.add(target.problem.value)
        const next = nodeOfTarget(this.guide, here.host, target)
        if (next !== null && next.host === host) open.push(next)
      }
    }
    this.#problemsFrom.set(node, found)
    return found
  }
}
