import type { Host } from '../guide/index.js'

interface Reach {
  /** Rows of the host's problems that each node can still end in, by node. */
  readonly rows: readonly ReadonlySet<number>[]
}

const known = new WeakMap<Host, Reach>()

/** What each node of a host's tree can still lead to. Worked out once a host, since a guide never changes. */
export function treeReach(host: Host): Reach {
  const before = known.get(host)
  if (before !== undefined) return before
  const rowOf = new Map(Array.from(host.problems, (problem, row) => [problem, row]))
  const rows: (ReadonlySet<number> | undefined)[] = host.nodes.map(() => undefined)
  // The tree has no cycles (the compiler refuses them), so plain recursion ends.
  const visit = (node: number): ReadonlySet<number> => {
    const done = rows[node]
    if (done !== undefined) return done
    const found = new Set<number>()
    const here = host.nodes[node]
    for (const target of here?.answers ?? []) {
      if (target.kind === 'problem') {
        const row = rowOf.get(target.problem)
        if (row !== undefined) found.add(row)
      } else if (target.kind === 'node') {
        for (const row of visit(target.node)) found.add(row)
      }
    }
    if (here?.notSure?.kind === 'node') for (const row of visit(here.notSure.node)) found.add(row)
    rows[node] = found
    return found
  }
  host.nodes.forEach((_, node) => visit(node))
  const reach: Reach = { rows: rows.map((row) => row ?? new Set<number>()) }
  known.set(host, reach)
  return reach
}
