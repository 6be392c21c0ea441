/** A store that takes longer to answer, in milliseconds, is one that requests would pile up on: it counts as down. */
export const STORE_PATIENCE_MS = 2000
