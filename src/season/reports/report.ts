/** How a case says what it is: by a specialist's word, or by the guide's own conclusion. */
export type ReportBasis = 'settled' | 'concluded'

/** One case as far as the season counts it. */
export interface Report {
  readonly caseId: number
  readonly problem: string
  readonly host: string
  /** Null when the asker named none. */
  readonly district: string | null
  /** ISO date of the question. */
  readonly askedOn: string
  readonly basis: ReportBasis
  /** What it counts: 1 when settled, else the probability of the conclusion, 0 to 1. */
  readonly weight: number
  /** Whoever asked, as far as it is known: reports of one asker have one number. */
  readonly asker: number
}

/** Where a case stands when it is looked at as a report. */
export interface Reportable {
  /** True for a call that is only practised. */
  readonly isPractice: boolean
  /** True for a repeat that was merged into another ticket: that one speaks for both. */
  readonly isMerged: boolean
  /** What a specialist settled it as, null for no known problem; undefined while no answer stands. */
  readonly settledAs: string | null | undefined
  /** What the guide concludes, with the probability of it on the evidence alone; null while it does not. */
  readonly concluded: { readonly problem: string; readonly probability: number } | null
}

/**
 * What a case counts for, or null when for nothing. A specialist's answer stands over the guide's: settled as something
 * else than was concluded, it counts as settled alone; settled as no known problem, not at all. What is concluded
 * counts by its probability *without* what the season adds, or reports would breed reports.
 */
export function countsAs({ isPractice, isMerged, settledAs, concluded }: Reportable): Pick<Report, 'problem' | 'basis' | 'weight'> | null {
  if (isPractice || isMerged || settledAs === null) return null
  if (settledAs !== undefined) return { problem: settledAs, basis: 'settled', weight: 1 }
  if (concluded === null) return null
  return { problem: concluded.problem, basis: 'concluded', weight: Math.min(1, Math.max(0, concluded.probability)) }
}
