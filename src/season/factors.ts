import type { PresenceState } from './presence.js'

/**
 * Every factor by which presence and reports move a prior. Our judgement, tried against the casebook with an invented
 * season (`npm run bench -- season-counts`): each alone turns a toss-up, none outweighs two good looks at the plant. The
 * weather's own factors stand in weather/moves.ts.
 */

/** Of a watch problem, by how far it has come. 'Not found' makes it less likely and never rules it out: somebody is the first. */
export const presenceFactors: Readonly<Record<PresenceState, number>> = {
  'not found': 0.5, 'found nearby': 1.5, present: 2, widespread: 3,
}

/** Reports of this week and of so many before it count as of now. */
export const RECENT_WEEKS = 3

/**
 * The guide's own share of a problem weighs as much as this many reports: with three reports more than that share leads
 * one to expect, a rare problem is twice as likely.
 */
export const REPORTS_THE_GUIDE_WEIGHS = 3

/** Reports alone make a problem at most this much more likely, and never less: few people ring about what they know. */
export const MOST_BY_REPORTS = 2.5

/** All that the season says together stays within these. */
export const LEAST_FACTOR = 0.25
export const MOST_FACTOR = 4

/** A problem that must be reported is never made less likely than this, whatever speaks against it. */
export const LEAST_FACTOR_OF_WATCH = 0.5

/** A factor nearer to 1 than this is not worth a word. */
export const LEAST_TOLD = 0.05
