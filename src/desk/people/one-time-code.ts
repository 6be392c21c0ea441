import { Secret, TOTP } from 'otpauth'

/** Bytes of a secret: 160 bits, as RFC 4226 (section 4, R6) recommends. */
export const SECRET_BYTES = 20
/** Length of a time step, in seconds (RFC 6238, section 5.2). */
const STEP_SECONDS = 30
/** One step before and after is taken too, for clocks that differ and people who type slowly (RFC 6238, section 5.2). */
const STEPS_BESIDE = 1

/** The time-based one-time code of a moment (RFC 6238 with SHA-1, the only form that every app knows). */
export function oneTimeCode(secret: Uint8Array, at: Date, digits = 6): string {
  return totp(secret, digits).generate({ timestamp: at.getTime() })
}

/** The time step that a code belongs to, near a moment; null when the code is of no step near it. */
export function stepOfCode(secret: Uint8Array, code: string, at: Date): number | null {
  const bare = code.replaceAll(/\s/g, '')
  if (!/^[0-9]{6}$/.test(bare)) return null
  const delta = totp(secret, 6).validate({ token: bare, timestamp: at.getTime(), window: STEPS_BESIDE })
  return delta === null ? null : Math.floor(at.getTime() / 1000 / STEP_SECONDS) + delta
}

/** The secret in base32 (RFC 4648), to be typed into an app. */
export function secretInText(secret: Uint8Array): string {
  return secretOf(secret).base32
}

/** The address from which an app takes the secret, usually drawn as a QR code. */
export function codeAddress(secret: Uint8Array, name: string, helpline: string): string {
  return new TOTP({ issuer: helpline, label: name, secret: secretOf(secret), digits: 6, period: STEP_SECONDS, algorithm: 'SHA1' }).toString()
}

function totp(secret: Uint8Array, digits: number): TOTP {
  return new TOTP({ secret: secretOf(secret), digits, period: STEP_SECONDS, algorithm: 'SHA1' })
}

function secretOf(bytes: Uint8Array): Secret {
  return new Secret({ buffer: new Uint8Array(bytes).buffer })
}
