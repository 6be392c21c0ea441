import type { Request } from 'express'
import { Language } from '../../shared/index.js'

/**
 * The language that a request asks for, by its Accept-Language header (RFC 9110, 12.5.4); English where it asks for none
 * that is spoken here.
 */
export function requestLanguage(request: Pick<Request, 'acceptsLanguages'>): Language {
  const best = Language.safeParse(request.acceptsLanguages([...Language.options]))
  return best.success ? best.data : 'en'
}
