const FIRST_MS = 30_000
const LONGEST_MS = 4 * 3_600_000

/**
 * How long to wait after the nth try in vain, in milliseconds: half a minute, doubled each time, four hours at most
 * (RFC 5321, section 4.5.4.1, wants growing intervals), a quarter more or less by chance so that letters which failed
 * together are not all tried again together.
 * @param chance from 0 to 1
 */
export function retryWaitMs(tries: number, chance: number): number {
  return Math.round(Math.min(FIRST_MS * 2 ** Math.max(0, tries - 1), LONGEST_MS) * (0.75 + chance / 2))
}

/** How long a letter is tried before a person has to see to it: RFC 5321 wants four to five days. */
export const GIVE_UP_MS = 4 * 86_400_000
