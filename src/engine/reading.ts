import type { CheckId, HostId, NodeName, ProblemId, RedFlagId } from '../guide/index.js'
import type { Finding } from './evidence.js'

/** One reason for or against a problem. */
export interface Reason {
  readonly check: CheckId
  readonly answer: string
  /** What the finding adds to all the others, in natural log odds: positive speaks for the problem, negative against it. */
  readonly weight: number
  /** The frequency word of the profile for this answer, or null when the profile does not mention it. */
  readonly seen: string | null
}

export interface Likely {
  /** Null stands for *something not listed here*. */
  readonly problem: ProblemId | null
  /** 0 to 1. All entries of a differential sum to 1. */
  readonly probability: number
  readonly reasons: readonly Reason[]
}

/** The ranked problems that fit the evidence, most likely first; all of them, the not-listed one among them. */
export type Differential = readonly Likely[]

/** Why a check is asked a second time: the answer given is rare with the problem that otherwise leads. */
export interface SecondLook {
  readonly said: string
  readonly problem: ProblemId
  /** The answer that most plants with that problem show. */
  readonly usual: string
}

export type Step =
  /** A red flag has been raised and not yet acknowledged, or it ends the case. */
  | { readonly kind: 'red-flag' }
  /** The plant or the complaint is not settled. */
  | { readonly kind: 'place' }
  /**
   * Ask this check; `by` says whether the tree or the engine's reckoning chose it, that it is a second look, or that it is
   * a last look before the case goes to a specialist.
   */
  | { readonly kind: 'ask'; readonly check: CheckId; readonly by: 'tree' | 'gain' | 'last look' }
  | { readonly kind: 'ask'; readonly check: CheckId; readonly by: 'second look'; readonly again: SecondLook }
  | { readonly kind: 'conclude'; readonly problem: ProblemId }
  /** `unsettled` are looks that would tell most, those for later among them; `sample` is the check to send to a laboratory. */
  | { readonly kind: 'hand-over'; readonly because: string; readonly unsettled: readonly CheckId[]; readonly sample: CheckId | null }

/** One node passed on the way through the tree. */
export interface PathStep {
  readonly host: HostId
  readonly node: NodeName
  readonly finding: Finding
}

/** An answer not yet given that would turn the case to another problem. */
export interface Turn {
  readonly check: CheckId
  readonly answer: string
  /** The problem that would then lead; null for *something not listed here*. */
  readonly to: ProblemId | null
}

/** What the engine makes of a case's evidence. */
export interface Reading {
  readonly step: Step
  /** Red flags raised by the words or by any answer. They stay for the rest of the case. */
  readonly cards: readonly RedFlagId[]
  /** The host the case is now about (an unknown-plant case may have moved to another host); null until settled. */
  readonly host: HostId | null
  readonly path: readonly PathStep[]
  readonly differential: Differential
  /** At a conclusion: what would change it, at most three, likeliest first. */
  readonly turns: readonly Turn[]
  /** Watch problems that are not concluded but cannot be passed over: each is to be named with what to do about it. */
  readonly watched: readonly ProblemId[]
}
