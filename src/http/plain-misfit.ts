import type { z } from 'zod'

type Issue = Parameters<z.core.$ZodErrorMap>[0]

/** What was expected of one place in a body or a query, in plain words: 'text, at most 4000 characters'. */
export function plainMisfit(issue: Issue): string {
  if (issue.input === undefined && issue.code !== 'unrecognized_keys') return `${nounFor(issue)}; nothing was sent`
  switch (issue.code) {
    case 'too_small': return issue.origin === 'string' ? 'some text; it is empty' : `${issue.minimum} or more`
    case 'too_big': return issue.origin === 'string' ? `at most ${issue.maximum} characters` : `${issue.maximum} or less`
    case 'unrecognized_keys': return `nothing called ${issue.keys.map(quoted).join(' or ')}`
    default: return nounFor(issue)
  }
}

/** The thing expected, such as 'a whole number'. */
function nounFor(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type': return NOUNS[issue.expected] ?? `a value of the kind "${issue.expected}"`
    case 'invalid_value': return `${issue.values.length > 1 ? 'one of: ' : ''}${issue.values.map(quoted).join(', ')}`
    case 'invalid_union': return 'options' in issue && Array.isArray(issue.options) ? `one of: ${issue.options.map(quoted).join(', ')}` : 'one of the forms that are described'
    case 'invalid_format': return FORMATS[issue.format] ?? `text of the form ${issue.pattern ?? issue.format}`
    case 'too_small': case 'too_big': return issue.origin === 'string' ? 'text' : 'a number'
    default: return 'something else'
  }
}

function quoted(value: unknown): string {
  return `"${String(value)}"`
}

const NOUNS: Readonly<Record<string, string>> = {
  string: 'text', number: 'a number', int: 'a whole number', boolean: 'true or false', object: 'an object with named parts', array: 'a list', undefined: 'nothing',
}

const FORMATS: Readonly<Record<string, string>> = { email: 'an email address, such as fern@garden.example', date: 'a date, such as 2026-05-14' }
