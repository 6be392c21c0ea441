import { LRUCache } from 'lru-cache'
import type { Guide } from '../../guide/index.js'

/** So many are kept for each guide; a busy helpline works on fewer cases at once. */
const MOST_KEPT = 256

/** Gives what was reckoned of this guide under this key, reckoning it when it is not kept. */
export type KeptReadings<Result> = (guide: Guide, key: string, reckon: () => Result) => Result

/**
 * Keeps what was reckoned, so that a case which is shown again as it is costs no reckoning. Only for what depends on the
 * guide and the key alone, and that nobody changes afterwards: then whether it was kept can be told by nothing but the
 * time it takes. What was asked for longest ago is let go first, and all of it with the guide.
 */
export function keepReadings<Result>(): KeptReadings<Result> {
  const ofGuide = new WeakMap<Guide, LRUCache<string, { readonly result: Result }>>()
  return (guide, key, reckon) => {
    const kept = ofGuide.get(guide) ?? new LRUCache<string, { readonly result: Result }>({ max: MOST_KEPT })
    ofGuide.set(guide, kept)
    const known = kept.get(key)
    if (known !== undefined) return known.result
    const result = reckon()
    kept.set(key, { result })
    return result
  }
}
