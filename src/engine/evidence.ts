import type { CheckId, HostId, NodeName, RedFlagId } from '../guide/index.js'

/** Where a finding came from. */
export type FindingOrigin = 'asked' | 'said' | 'note' | 'photo'

/** One answered check of a case. At most one finding a check; a later answer replaces the earlier one. */
export interface Finding {
  readonly check: CheckId
  /** One of the check's answer labels, or *not sure*, or *can't look now*. */
  readonly answer: string
  readonly from: FindingOrigin
  /** True when the person has looked twice: the answer is then trusted, however rare. */
  readonly again?: boolean
}

/** Everything a case's next step depends on. Plain JSON: saved, loaded and read again it gives the same step. */
export interface Evidence {
  /** Red flags heard in the asker's words. Answers may raise more. */
  readonly redFlags: readonly RedFlagId[]
  /** True once the asker has seen the red-flag cards and chose to go on with the plant question. */
  readonly carriedOn: boolean
  /** The plant and the complaint, once settled; a null node means the top of the host's tree. */
  readonly start: { readonly host: HostId; readonly node: NodeName | null } | null
  readonly findings: readonly Finding[]
}

/** The when and where of a case. */
export interface Setting {
  /** ISO date on which the question was asked. */
  readonly on: string
  /** District id, or null when not said. */
  readonly district: string | null
  /**
   * What the season multiplies the priors of problems by, by name; what is left out stays as it is. Part of the setting
   * and not looked up anew: the same case gives the same reading whenever it is read.
   */
  readonly plausible?: Readonly<Record<string, number>>
}

/**
 * The findings with one answer added. An earlier answer to the same check gives way to it, and the check then counts as
 * looked at twice.
 */
export function withFinding(findings: readonly Finding[], { check, answer, from }: Finding): Finding[] {
  const others = findings.filter((one) => one.check !== check)
  const isAgain = others.length < findings.length
  return [...others, isAgain ? { check, answer, from, again: true } : { check, answer, from }]
}
