import type { Language, ProblemDocument } from '../../shared/index.js'
import { DeskFault } from '../desk/index.js'
import { errorWords } from './error-words.js'
import { type ErrorCode, errors } from './errors.js'
import { RequestFault } from './request-fault.js'

/** An answer that says no: a problem document (RFC 9457) with the headers that go with it. */
export interface Refusal {
  readonly document: ProblemDocument
  readonly headers: Readonly<Record<string, string>>
}

/** What to answer for anything thrown while a request was served. What is not known is told to nobody outside. */
export function refusalFor(thrown: unknown, request: string, language: Language = 'en'): Refusal {
  if (thrown instanceof DeskFault) return refusalOfDesk(thrown, request, language)
  if (thrown instanceof RequestFault) {
    const { words, faults, headers = {} } = thrown.facts
    const document = problemDocument(thrown.code, request, language, words)
    return { document: faults === undefined ? document : { ...document, faults: [...faults] }, headers }
  }
  return { document: problemDocument(codeOfForeign(thrown), request, language), headers: {} }
}

function refusalOfDesk({ code, facts }: DeskFault, request: string, language: Language): Refusal {
  const seconds = facts.retryAfterSeconds
  const words = { ...facts.words, ...(seconds === undefined ? {} : { seconds: String(seconds) }) }
  const document = problemDocument(code, request, language, words)
  return {
    document: facts.case === undefined ? document : { ...document, case: facts.case },
    headers: seconds === undefined ? {} : { 'retry-after': String(seconds) },
  }
}

function problemDocument(
  code: ErrorCode, request: string, language: Language, words: Readonly<Record<string, string>> = {},
): ProblemDocument {
  const { status } = errors[code]
  const { title, sentence } = errorWords(code, language)
  const detail = sentence.replace(/\{([a-z]+)\}/g, (gap, name: string) => words[name] ?? gap)
  return { type: `urn:frondline:fault:${code.toLowerCase().replaceAll('_', '-')}`, title, status, detail, code, request }
}

/** Express and its parts throw errors that carry a status; those of a client are told apart, all others are ours. */
function codeOfForeign(thrown: unknown): ErrorCode {
  const { type, status } = foreignError(thrown)
  switch (type) {
    case 'entity.parse.failed': return 'BROKEN_JSON'
    case 'body.not.utf8': return 'UNREADABLE_TEXT'
    case 'entity.too.large': return 'TOO_LARGE'
    case 'encoding.unsupported': case 'charset.unsupported': return 'NOT_JSON'
  }
  if (status === 404) return 'NO_SUCH_PLACE'
  return status >= 400 && status < 500 ? 'BAD_REQUEST' : 'UNEXPECTED'
}

function foreignError(thrown: unknown): { type: string; status: number } {
  if (typeof thrown !== 'object' || thrown === null) return { type: '', status: 500 }
  const type = 'type' in thrown && typeof thrown.type === 'string' ? thrown.type : ''
  const status = 'status' in thrown && typeof thrown.status === 'number' ? thrown.status : 500
  return { type, status }
}
