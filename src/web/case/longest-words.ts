import type { MAX_WORDS } from '../../../shared/index.js'

/** Most characters the service takes in one text. Only the type comes from `shared`: its schemas stay out of the browser. */
export const LONGEST_WORDS: typeof MAX_WORDS = 4000
