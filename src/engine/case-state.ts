import type { Guide } from '../guide/index.js'
import type { Belief } from './belief.js'
import type { Evidence } from './evidence.js'
import type { Offer } from './open-checks.js'
import type { PassedOver } from './passed-over.js'
import type { Sighting } from './sightings.js'
import type { TreeWalk } from './tree-walk.js'

/** All that is known of a case when its next step is planned. */
export interface CaseState {
  readonly guide: Guide
  readonly evidence: Evidence
  readonly walk: TreeWalk
  /** In whatever state the last reckoning left it. */
  readonly belief: Belief
  readonly priors: Float64Array
  readonly sightings: readonly Sighting[]
  /** P(problem) by row, the last *something not listed here*. */
  readonly shares: Float64Array
  readonly open: readonly Offer[]
  readonly passed: PassedOver
}
