import type { LinkedGuide } from '../link.js'
import type { Original } from './texts-of.js'

/**
 * The files whose words someone with a question about this host may read: the host, its problems, the checks of its
 * tree, those that only its own problems mention (the engine may ask them too), and how to send a sample.
 */
export function filesOfHost(linked: LinkedGuide, hostId: string): Original[] {
  const host = linked.hosts.get(hostId)
  if (host === undefined) return []
  const problems = [...linked.problems.values()].filter(({ hosts }) => hosts.some((entry) => entry.host.value === hostId))
  const checks = new Set(host.nodes.map(({ check }) => check.value))
  for (const { hosts, shows } of problems) {
    for (const { check } of shows) {
      if (hosts.length === 1 || linked.checks.get(check.value)?.effort === 'send a sample') checks.add(check.value)
    }
  }
  return [host, ...problems, ...[...checks].sort().flatMap((check) => linked.checks.get(check) ?? [])]
}
