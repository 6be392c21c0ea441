import type { Cost, Effort } from '../guide/index.js'

/**
 * How probable the leading problem must be before the engine concludes it, by the cost of being wrong.
 * Our judgement, tried against the casebook; "likely" begins at 66 % on the EFSA scale (EFSA Journal 2018;16(1):5123).
 */
export const bars: Readonly<Record<Cost, number>> = { ordinary: 0.75, costly: 0.85, regulated: 0.9, dangerous: 0.9 }

/** Prior share of *something not listed here* on any host. Our judgement. */
export const NOT_LISTED_PRIOR = 0.05

/** Trouble of one check against a glance; information gain is divided by it. Our judgement. */
export const effortWeights: Readonly<Record<Effort, number>> = {
  glance: 1, 'hand lens': 1.5, dig: 3, 'wait a day': 6, 'send a sample': 12,
}

/** A check whose expected gain is below this many bits cannot change much and is not asked. */
export const LEAST_GAIN_BITS = 0.05

/** Checks asked by reckoning, beyond the tree, before a case is handed over. */
export const MOST_EXTRA_CHECKS = 5

/** The tree is followed while the problems it can still reach hold at least this share together. */
export const LEAST_SHARE_OF_TREE = 0.1

/** A conclusion before the tree's end needs at least this many telling answers. */
export const LEAST_FINDINGS = 2

/** A problem outside its season is this much less likely; in the month beside it, this much. Our judgement, capped so that season alone never decides. */
export const seasonFactors = { inSeason: 1, besideSeason: 0.6, outOfSeason: 0.2 } as const
