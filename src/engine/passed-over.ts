import type { Host } from '../guide/index.js'

const known = new WeakMap<Host, Map<number, ReadonlySet<number>>>()

/**
 * Numbers of the checks that a complaint passes over: those of the nodes that every way from the top of the tree to its
 * entry goes through. Whoever has that complaint has answered them in saying so ("spots on the leaves" is about leaves),
 * and asking them would be asking what was said.
 * @param entry index of the entry's node
 */
export function passedOver(host: Host, entry: number): ReadonlySet<number> {
  const before = known.get(host) ?? new Map<number, ReadonlySet<number>>()
  known.set(host, before)
  const done = before.get(entry)
  if (done !== undefined) return done
  const checks = new Set<number>()
  if (leadsTo(host, entry, -1)) {
    host.nodes.forEach(({ check }, node) => {
      if (node !== entry && !leadsTo(host, entry, node)) checks.add(check)
    })
  }
  before.set(entry, checks)
  return checks
}

/** Whether the tree's top leads to a node without going through another. */
function leadsTo(host: Host, wanted: number, without: number): boolean {
  const seen = new Set<number>([without])
  const open = [host.start]
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (seen.has(node)) continue
    if (node === wanted) return true
    seen.add(node)
    const here = host.nodes[node]
    for (const target of here === undefined ? [] : [...here.answers, here.notSure]) {
      if (target?.kind === 'node') open.push(target.node)
    }
  }
  return false
}
