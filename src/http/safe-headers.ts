import type { RequestHandler } from 'express'
import helmet from 'helmet'

/** The headers that keep our pages to themselves: no script, style or frame from elsewhere, nothing inline. */
export function safeHeaders(behindHttps: boolean): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        'default-src': ["'none'"],
        'script-src': ["'self'"],
        'style-src': ["'self'"],
        'img-src': ["'self'", 'data:'],
        'font-src': ["'self'"],
        'connect-src': ["'self'"],
        'manifest-src': ["'self'"],
        'form-action': ["'self'"],
        'base-uri': ["'none'"],
        'frame-ancestors': ["'none'"],
        ...(behindHttps ? { 'upgrade-insecure-requests': [] } : {}),
      },
    },
    // A case's link is in the address of its page, and opens it: it must not travel on to wherever a source links.
    referrerPolicy: { policy: 'no-referrer' },
    strictTransportSecurity: behindHttps ? { maxAge: 31_536_000 } : false,
    xFrameOptions: { action: 'deny' },
  })
}
