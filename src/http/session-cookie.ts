import type { Request, Response } from 'express'

/** The cookie that holds a session's token. */
export interface SessionCookie {
  /** The token that came with the request, or null. */
  readonly token: string | null
  give(token: string, expiresAt: Date): void
  takeBack(): void
}

/** The name of the session cookie. */
export function sessionCookieName(behindHttps: boolean): string {
  return behindHttps ? '__Host-frondline' : 'frondline'
}

/**
 * The session cookie of a request. Behind HTTPS its name carries the `__Host-` prefix, so that browsers take it only
 * from this very host over HTTPS (RFC 6265bis, section 4.1.3.2).
 */
export function sessionCookie(request: Request, response: Response, behindHttps: boolean): SessionCookie {
  const name = sessionCookieName(behindHttps)
  const attributes = { httpOnly: true, sameSite: 'strict', secure: behindHttps, path: '/' } as const
  return {
    token: cookieNamed(request.headers.cookie ?? '', name),
    give: (token, expiresAt) => void response.cookie(name, token, { ...attributes, expires: expiresAt }),
    takeBack: () => void response.clearCookie(name, attributes),
  }
}

/** The value of a cookie in a Cookie header, or null. Tokens are base64url, so nothing needs decoding. */
export function cookieNamed(header: string, name: string): string | null {
  if (header === '') return null
  for (const pair of header.split(';')) {
    const [key, value] = pair.split('=', 2)
    if (key?.trim() === name && value !== undefined && /^[A-Za-z0-9_-]+$/.test(value.trim())) return value.trim()
  }
  return null
}
