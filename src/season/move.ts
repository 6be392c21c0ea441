/** Why a problem is more or less likely here and now: a code with its values, so that every language finds its own words. */
export interface MoveReason {
  /** Closed word, such as 'reports'; `wording-en.ts` has the English for each. */
  readonly code: string
  readonly values: Readonly<Record<string, string | number>>
}

/** One thing that moves how plausible a problem is. */
export interface Move {
  /** What the prior is multiplied by: above 1 it is more likely, below 1 less. */
  readonly factor: number
  readonly reason: MoveReason
}
