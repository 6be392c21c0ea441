import type { Guide, Host, HostId, Problem, ProblemId } from '../../src/guide/index.js'
import { seededRandom } from '../../src/engine/index.js'

/**
 * The guide with `times` as many hosts: each made one is a real host under an invented name, its phrases spelled with
 * some invented words, so that the words of the index grow with it as real ones would.
 */
export function largerGuide(guide: Guide, times: number): Guide {
  const random = seededRandom(times)
  const hosts: Host[] = [...guide.hosts]
  const problems: Problem[] = [...guide.problems]
  const invent = (): string => Array.from({ length: 3 }, () => `${'bcdfglmnprstv'[Math.floor(random() * 13)] ?? 'b'}${'aeiou'[Math.floor(random() * 5)] ?? 'a'}`).join('')
  for (let turn = 1; turn < times; turn += 1) {
    for (const host of guide.hosts) {
      const number = hosts.length
      const own = new Map<number, number>()
      for (const problem of host.problems) {
        const real = guide.problems[problem]
        if (real === undefined) continue
        own.set(problem, problems.length)
        problems.push({ ...real, number: problems.length, id: `${real.id}-${number}` as ProblemId, name: `${invent()} ${real.name}` })
      }
      const moved = (target: Host['nodes'][number]['answers'][number]): Host['nodes'][number]['answers'][number] => (
        target.kind === 'problem' ? { kind: 'problem', problem: own.get(target.problem) ?? target.problem } : target)
      hosts.push({
        ...host, number, id: `${host.id}-${number}` as HostId, name: invent(), called: [invent(), `${invent()} ${invent()}`],
        problems: Int32Array.from(own.values()),
        nodes: host.nodes.map((node) => ({
          ...node, answers: node.answers.map(moved), notSure: node.notSure === null ? null : moved(node.notSure),
          entry: node.entry.map((phrase) => (random() < 0.3 ? `${phrase} ${invent()}` : phrase)),
        })),
      })
    }
  }
  return {
    ...guide, hosts, problems, hostNumbers: new Map(hosts.map(({ id, number }) => [id, number])), problemNumbers: new Map(problems.map(({ id, number }) => [id, number])),
  }
}
