import type { Language } from '../../shared/index.js'
import type { ErrorWords } from './asker-errors.js'
import { type ErrorCode, errors } from './errors.js'
import { errorsEs } from './errors-es.js'

/** Title and sentence of a fault in a language; those that no asker meets are in English. */
export function errorWords(code: ErrorCode, language: Language): ErrorWords {
  const translated: Partial<Record<ErrorCode, ErrorWords>> = language === 'es' ? errorsEs : {}
  return translated[code] ?? errors[code]
}
