import { Document } from 'yaml'
import type { Drawn, DrawnTree } from '../engine/index.js'
import type { Host } from '../guide/index.js'

/** A drawn tree as the YAML of a host file, entries left out: those are for a person to place. */
export function treeAsYaml(host: Host, { root }: DrawnTree): string {
  const nodes: Record<string, unknown> = {}
  const used = new Map<string, number>()
  const add = (drawn: Drawn): unknown => {
    if (drawn.kind === 'problem') return { problem: drawn.problem.id }
    if (drawn.kind === 'hand over') return { 'hand over': 'What you have seen fits more than one cause.' }
    const count = (used.get(drawn.check.id) ?? 0) + 1
    used.set(drawn.check.id, count)
    const name = count === 1 ? drawn.check.id : `${drawn.check.id}-${count}`
    const node: { check: string; answers: Record<string, unknown> } = { check: drawn.check.id, answers: {} }
    // Taken before its branches are drawn, so that the file reads from the top down.
    nodes[name] = node
    drawn.answers.forEach((answer, place) => { node.answers[drawn.check.answers[place]?.label ?? '?'] = add(answer) })
    return name
  }
  const start = add(root)
  const document = new Document({ host: host.id, name: host.name, called: [...host.called], start, nodes })
  return document.toString({ lineWidth: 120 })
}
