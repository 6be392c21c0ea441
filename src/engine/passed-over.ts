import type { Host } from '../guide/index.js'

/** What a complaint has answered by being made: the checks passed over, by number, each with the answers that lead to it. */
export type PassedOver = ReadonlyMap<number, ReadonlySet<number>>

const known = new WeakMap<Host, Map<number, PassedOver>>()

/**
 * The checks that a complaint passes over: those of the nodes that every way from the top of the tree to its entry goes
 * through. Whoever has that complaint has answered them in saying so ("spots on the leaves" is about leaves, and they
 * have spots), and asking them would be asking what was said.
 * @param entry index of the entry's node
 */
export function passedOver(host: Host, entry: number): PassedOver {
  const before = known.get(host) ?? new Map<number, PassedOver>()
  known.set(host, before)
  const done = before.get(entry)
  if (done !== undefined) return done
  const passed = new Map<number, ReadonlySet<number>>()
  if (leadsTo(host, host.start, entry, -1)) {
    host.nodes.forEach(({ check, answers }, node) => {
      if (node === entry || leadsTo(host, host.start, entry, node)) return
      passed.set(check, new Set(answers.flatMap((target, answer) => (
        target.kind === 'node' && leadsTo(host, target.node, entry, -1) ? [answer] : []))))
    })
  }
  before.set(entry, passed)
  return passed
}

/** Whether one node leads to another without going through a third. */
function leadsTo(host: Host, from: number, wanted: number, without: number): boolean {
  const seen = new Set<number>([without])
  const open = [from]
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
