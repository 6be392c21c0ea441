import type { Evidence, Finding, Setting } from '../../src/engine/index.js'
import type { CheckId, HostId, NodeName, RedFlagId } from '../../src/guide/index.js'

export const MAY_DAY: Setting = { on: '2026-05-14', district: 'eastmere' }

/** A case about the lettuce world, started at a node (the top by default) with answers as [check, answer] pairs. */
export function lettuceCase(answers: readonly (readonly [string, string])[] = [], node: string | null = null): Evidence {
  return {
    redFlags: [] as RedFlagId[],
    carriedOn: false,
    start: { host: 'lettuce' as HostId, node: node as NodeName | null },
    findings: answers.map(([check, answer]): Finding => ({ check: check as CheckId, answer, from: 'asked' })),
  }
}
