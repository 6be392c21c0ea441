import { hash, verify } from '@node-rs/argon2'

/**
 * Argon2id with the first of the settings recommended by the OWASP Password Storage Cheat Sheet: 19 MiB of memory, two
 * passes, one lane. (Argon2id is the library's default; its name cannot be imported under isolated modules.)
 */
const STRENGTH = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

/** The hash to keep instead of a password. */
export function hashPassword(password: string): Promise<string> {
  return hash(password, STRENGTH)
}

/**
 * Whether a password is the one behind this hash. Without a hash it takes as long and is false, so that the time
 * does not tell whether a name exists.
 */
export async function passwordFits(password: string, kept: string | null): Promise<boolean> {
  const fits = await verify(kept ?? await hashOfNobody(), password)
  return fits && kept !== null
}

let ofNobody: Promise<string> | null = null

function hashOfNobody(): Promise<string> {
  ofNobody ??= hashPassword('no one has this password')
  return ofNobody
}
