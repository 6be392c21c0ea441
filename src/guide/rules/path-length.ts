import type { NodeDraft } from '../drafts.js'
import type { LinkedNode } from '../link.js'
import type { RuleContext } from '../rule-context.js'

/** Longest path, in checks, that a caller should be asked to follow. */
export const LONGEST_PATH = 8

/** Warning. No path of a tree, from its start or from an entry, asks more than 8 checks. */
export function pathLengthRule(context: RuleContext): void {
  for (const host of context.guide.hosts.values()) {
    const longest = new Map<NodeDraft, number>()
    const measuring = new Set<NodeDraft>()
    const measure = (here: LinkedNode): number => {
      const known = longest.get(here.node)
      if (known !== undefined) return known
      if (measuring.has(here.node)) return 0 // a cycle, reported by its own rule
      measuring.add(here.node)
      const below = context.nextNodes(here).filter((next) => next.host === host).map(measure)
      const length = 1 + Math.max(0, ...below)
      measuring.delete(here.node)
      longest.set(here.node, length)
      return length
    }
    if (host.nodes.length > 2000) continue
    const begins = host.nodes.filter(({ name, entry }) => name.value === host.start.value || entry.length > 0)
    // The start first, so that of equally long paths the one from the start is named.
    begins.sort((a, b) => Number(b.name.value === host.start.value) - Number(a.name.value === host.start.value))
    let worst: { length: number; begin: NodeDraft } | null = null
    for (const begin of begins) {
      const length = measure({ host, node: begin })
      if (length > (worst?.length ?? LONGEST_PATH)) worst = { length, begin }
    }
    if (worst === null) continue
    const { length, begin } = worst
    context.warn({
      code: 'PATH_LENGTH', at: [begin.name.value === host.start.value ? host.start.at : begin.name.at], of: host,
      message: `The longest path of "${host.id.value}" asks ${length} checks. Expected at most ${LONGEST_PATH}.`,
    })
  }
}
