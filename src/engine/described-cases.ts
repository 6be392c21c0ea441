/** Described cases with their known end, as numbers. */
export interface DescribedCases {
  /** Number of answers of each check. */
  readonly answers: readonly number[]
  readonly problems: number
  readonly cases: readonly DescribedCase[]
}

export interface DescribedCase {
  readonly problem: number
  /** Answer number at each check, -1 where it was not recorded. */
  readonly answers: Int8Array
}
