import { CANT_LOOK, type Check, type Guide, type Host, type NodeName, NOT_SURE, type Target, type TreeNode } from '../guide/index.js'
import type { Evidence, Finding } from './evidence.js'
import type { PathStep } from './reading.js'

/** Where the authored tree stands after the answers given. */
export type TreeStand =
  /** The node whose check comes next. */
  | { readonly kind: 'node'; readonly node: number }
  | { readonly kind: 'problem'; readonly problem: number }
  | { readonly kind: 'hand over'; readonly because: string }
  /** *not sure* or *can't look now* where the tree has no branch for it. */
  | { readonly kind: 'off'; readonly node: number }

export interface TreeWalk {
  readonly host: Host
  /** Name of the node where the walk began; null for the top of the tree. */
  readonly entry: NodeName | null
  readonly path: readonly PathStep[]
  readonly stand: TreeStand
}

/**
 * Follows the tree from the case's start by the findings, across to other hosts' trees where it leads there.
 * Null when the start's host is not in the guide; a node that is gone falls back to the top of the tree.
 */
export function walkTree(guide: Guide, evidence: Evidence): TreeWalk | null {
  if (evidence.start === null) return null
  let host = guide.hosts[guide.hostNumbers.get(evidence.start.host) ?? -1]
  if (host === undefined) return null
  const named = evidence.start.node
  let node = named === null ? host.start : Math.max(host.nodes.findIndex(({ name }) => name === named), -1)
  if (node < 0) node = host.start
  const findings = new Map(evidence.findings.map((finding) => [finding.check as string, finding]))
  const path: PathStep[] = []
  for (;;) {
    const here: TreeNode | undefined = host.nodes[node]
    if (here === undefined) return { host, entry: named, path, stand: { kind: 'node', node: host.start } }
    const check: Check | undefined = guide.checks[here.check]
    const finding: Finding | undefined = check === undefined ? undefined : findings.get(check.id)
    if (check === undefined || finding === undefined) return { host, entry: named, path, stand: { kind: 'node', node } }
    let target: Target | null | undefined
    if (finding.answer === NOT_SURE || finding.answer === CANT_LOOK) target = here.notSure
    else {
      const answer = check.answers.findIndex(({ label }) => label === finding.answer)
      if (answer < 0) return { host, entry: named, path, stand: { kind: 'node', node } }
      target = here.answers[answer]
    }
    path.push({ host: host.id, node: here.name, finding })
    if (target == null) return { host, entry: named, path, stand: { kind: 'off', node } }
    if (target.kind === 'problem' || target.kind === 'hand over') return { host, entry: named, path, stand: target }
    if (target.kind === 'host') {
      const other: Host | undefined = guide.hosts[target.host]
      if (other === undefined) return { host, entry: named, path, stand: { kind: 'off', node } }
      host = other
    }
    node = target.node
  }
}
