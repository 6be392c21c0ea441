/**
 * Milliseconds to wait before attempt number `attempt` (1 for the first repeat): 2 s, 4 s, 8 s … at most 60 s.
 * `random` in 0..1 spreads the waits by a quarter either way, so that many panels do not come back at once.
 */
export function waitBeforeAttempt(attempt: number, random: number): number {
  const plain = Math.min(FIRST_WAIT_MS * 2 ** (attempt - 1), LONGEST_WAIT_MS)
  return Math.round(plain * (0.75 + 0.5 * random))
}

/** Past this many repeats only the button tries again: a tab left open for days should fall silent. */
export const MAX_REPEATS = 12

const FIRST_WAIT_MS = 2_000
const LONGEST_WAIT_MS = 60_000
