import type { z } from 'zod'
import { closestNames } from './closest-names.js'
import type { Acceptance } from './drafts.js'
import type { ParsedFile, Report, YamlPath } from './parse.js'
import type { Located } from './source-file.js'

/** Reads values of a parsed file together with where they were written. */
export function placing(parsed: ParsedFile) {
  const text = (value: string, path: YamlPath): Located<string> => ({ value, at: parsed.at(path) })
  return {
    text,
    key: (value: string, path: YamlPath): Located<string> => ({ value, at: parsed.keyAt(path) }),
    texts: (values: readonly string[] | undefined, path: YamlPath): Located<string>[] =>
      (values ?? []).map((value, index) => text(value, [...path, index])),
    accepts: (values: readonly { warning: string; because: string }[] | undefined): Acceptance[] =>
      (values ?? []).map(({ warning, because }, index) => ({ warning: text(warning, ['accepts', index, 'warning']), because })),
  }
}

/** The file's values as a shape has them; what does not fit is reported with its place, and then null comes back. */
export function fit<Shape extends z.ZodType>(shape: Shape, parsed: ParsedFile, report: Report): z.infer<Shape> | null {
  const result = shape.safeParse(parsed.values)
  if (result.success) return result.data
  for (const issue of result.error.issues) {
    const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) reportUnknownKey(shape, parsed, [...path, key], report)
      continue
    }
    const found = foundAt(parsed.values, path)
    const where = path.length === 0 ? 'This file' : `"${path.join(' → ')}"`
    const options = issue.code === 'invalid_value' ? issue.values.map(String) : []
    const expected = options.length > 0 ? `one of: ${options.join(', ')}` : expectation(issue)
    const atKey = issue.code === 'invalid_key'
    report({
      severity: 'error', code: 'SHAPE',
      at: [atKey ? parsed.keyAt(path) : parsed.at(path)],
      message: found === undefined
        ? `${where} is missing. Expected ${expected}.`
        : `${where} is ${describe(found)}. Expected ${expected}.`,
      nearest: typeof found === 'string' ? closestNames(found, options) : [],
    })
  }
  return null
}

function reportUnknownKey(shape: z.ZodType, parsed: ParsedFile, path: YamlPath, report: Report): void {
  const key = String(path[path.length - 1])
  const keys = [...keysOf(shape)]
  report({
    severity: 'error', code: 'UNKNOWN_KEY', at: [parsed.keyAt(path)], nearest: closestNames(key, keys),
    message: `The key "${key}" means nothing here. Expected one of the keys in trees/README.md.`,
  })
}

/** All keys that a shape knows at any depth, for suggestions. */
function keysOf(shape: unknown, found = new Set<string>(), seen = new Set<unknown>()): Set<string> {
  if (typeof shape !== 'object' || shape === null || seen.has(shape)) return found
  seen.add(shape)
  const { def } = shape as { def?: Record<string, unknown> }
  if (def === undefined) return found
  for (const [name, part] of Object.entries(def)) {
    if (name === 'shape' && typeof part === 'object' && part !== null) {
      for (const [key, inner] of Object.entries(part)) {
        found.add(key)
        keysOf(inner, found, seen)
      }
    } else if (Array.isArray(part)) {
      for (const inner of part) keysOf(inner, found, seen)
    } else keysOf(part, found, seen)
  }
  return found
}

function expectation(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_key') return issue.issues[0]?.message ?? 'another name'
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid input')) {
    return plainTypes[issue.expected] ?? `a ${issue.expected}`
  }
  if (issue.code === 'too_small' && issue.message.startsWith('Too small')) {
    if (issue.origin === 'array') return `at least ${issue.minimum} in the list`
    return `a number ${issue.inclusive === false ? 'above' : 'of at least'} ${issue.minimum}`
  }
  if (issue.code === 'too_big' && issue.message.startsWith('Too big')) {
    return `a number ${issue.inclusive === false ? 'below' : 'of at most'} ${issue.maximum}`
  }
  return issue.message.replace(/^Invalid input: expected /, '')
}

/** What an author calls the types that a shape asks for. */
const plainTypes: Readonly<Record<string, string>> = {
  record: 'keys with values', object: 'keys with values', array: 'a list', string: 'text', int: 'a whole number', boolean: 'true or false',
}

function foundAt(values: unknown, path: YamlPath): unknown {
  let here = values
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined
    here = Object.hasOwn(here, step) ? (here as Record<string | number, unknown>)[step] : undefined
  }
  return here
}

function describe(found: unknown): string {
  if (found === null) return 'empty'
  if (Array.isArray(found)) return found.length === 0 ? 'an empty list' : 'a list'
  if (typeof found === 'object') return 'a group of keys'
  return `"${String(found).slice(0, 60)}"`
}
