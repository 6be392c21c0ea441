import type { ErrorCode } from './errors.js'

/** One thing that does not fit, with its place in the body or the query. */
export interface Misfit {
  readonly at: string
  readonly expected: string
}

export interface RequestFaultFacts {
  readonly words?: Readonly<Record<string, string>>
  readonly faults?: readonly Misfit[]
  /** Headers that go with the answer. */
  readonly headers?: Readonly<Record<string, string>>
}

/** A refusal at the door: the desk was not asked. */
export class RequestFault extends Error {
  readonly code: ErrorCode
  readonly facts: RequestFaultFacts

  constructor(code: ErrorCode, facts: RequestFaultFacts = {}) {
    super(code)
    this.name = 'RequestFault'
    this.code = code
    this.facts = facts
  }
}
