import type { Guide, Host } from '../guide/index.js'
import { LIKELY_SHARE } from './bars.js'

/**
 * Whether something regulated or dangerous is likely enough that nothing else should be said too soon.
 * @param shares P(problem) by row, the last *something not listed here*
 */
export function isGraveLikely(guide: Guide, host: Host, shares: Float64Array): boolean {
  return shares.some((share, row) => {
    const cost = guide.problems[host.problems[row] ?? -1]?.cost
    return share >= LIKELY_SHARE && (cost === 'regulated' || cost === 'dangerous')
  })
}
