import type { Contact } from '../../../shared/index.js'

/** Words without what tells who wrote them. */
export interface Scrubbed {
  readonly words: string
  /** How many of each kind were taken out. */
  readonly removed: readonly { readonly kind: string; readonly count: number }[]
}

/** One kind of personal data: how it looks, and the part before it that stays (as the first group). */
interface Pattern {
  readonly kind: 'e-mail address' | 'web address' | 'telephone number' | 'address' | 'name'
  readonly looks: RegExp
}

/** Capitalised words, with a full stop only after an initial: behind any other word it ends a sentence. */
const NAME = /(?:(?:\p{Lu}|Mrs?|Ms|Dr|Prof)\.\s*)*\p{Lu}[\p{L}’'-]*(?:\s+(?:\p{Lu}\.\s*)*\p{Lu}[\p{L}’'-]*){0,3}/u.source
const LOWER_NAME = /\p{L}[\p{L}’'-]*/u.source
const PART = /\p{Lu}[\p{L}’'.-]*/u.source
const STREET = '(?:[Ss]treet|[Ss]t\\.|[Rr]oad|[Rr]d\\b|[Ll]ane|[Aa]venue|[Aa]ve\\b|[Cc]lose|[Dd]rive|[Cc]rescent|[Tt]errace|Way|Court|Place|Gardens|Green|Row|Hill|Square|Park)'
/** What may stand between two digits of a telephone number: spaces, dashes of every kind, brackets, full stops, slashes. */
const APART = '[\\s().\\p{Pd}/]{0,3}'
/** A number before one of these counts or measures something, and is no house. */
const MEASURE = '(?:f(?:ee|oo)t|ft|yards?|met(?:er|re)s?|m|inch(?:es)?|cm|km|miles?|plants?|trees?|rows?|pots?|weeks?|days?|months?|years?)'

/**
 * In this order: an address at a mail host must go before the name in it can. What people write has no grammar, so this
 * errs on the side of taking out too much; the specialist sees the result before it is kept.
 */
const PATTERNS: readonly Pattern[] = [
  { kind: 'e-mail address', looks: /()[^\s@<>(),;:]+@[^\s@<>(),;]+\.[\p{L}]{2,}/giu },
  { kind: 'web address', looks: /()\b(?:https?:\/\/|www\.)\S+/giu },
  // Seven digits and more, however they are set apart; a date or a time is not one, nor does one begin inside a date.
  { kind: 'telephone number', looks: new RegExp(`()(?<![\\p{L}\\d])(?<!\\d[-./])(?!\\d{4}-\\d{2}-\\d{2}\\b)(?!\\d{1,2}[./]\\d{1,2}[./]\\d{2,4}\\b)\\+?\\(?\\d(?:${APART}\\d){6,}(?![\\p{L}\\d])`, 'gu') },
  // Shorter ones where people say what they are.
  { kind: 'telephone number', looks: new RegExp(`(\\b(?:tel(?:ephone)?|phone|mob(?:ile)?|ring|call|text|number is)\\b(?:[\\s:.,]|me\\b|us\\b|back\\b|on\\b|at\\b|is\\b|no\\b|number\\b)*)\\d(?:${APART}\\d){4,}(?![\\p{L}\\d])`, 'giu') },
  { kind: 'address', looks: new RegExp(`()\\b\\d{1,4}[a-z]?,?\\s+(?:${PART}\\s+){1,3}${STREET}(?![\\p{L}])`, 'gu') },
  { kind: 'address', looks: new RegExp(`()\\b\\d{1,4}[a-z]?,?\\s+(?!${MEASURE}\\b)${LOWER_NAME}\\s+(?:street|road|lane|avenue|close|drive|crescent|terrace)(?![\\p{L}])`, 'gu') },
  { kind: 'address', looks: /()\b[A-Z]{1,2}\d[A-Z\d]?\s*\d[A-Z]{2}\b/gu },
  { kind: 'address', looks: /()\b[A-Z]{2}\s+\d{5}(?:-\d{4})?\b/gu },
  { kind: 'name', looks: new RegExp(`(\\b(?:[Mm]y name(?:\\s+is|['’]s)|[Mm]y name:|(?:I['’]m|I am) called|[Cc]all me|[Aa]sk for|[Nn]ame:)\\s+)(?!(?:on|at|back|after|before|if|when|please)\\b)(?:${NAME}|${LOWER_NAME})`, 'gu') },
  { kind: 'name', looks: new RegExp(`(\\b(?:[Tt]his is|I['’]m|I am)\\s+)(?:${PART}\\s+${PART}(?:\\s+${PART})?)`, 'gu') },
  { kind: 'name', looks: new RegExp(`()\\b(?:Mr|Mrs|Ms|Miss|Mx|Dr|Prof|Sir|Lady)\\.?\\s+${NAME}`, 'gu') },
  { kind: 'name', looks: new RegExp(`((?:[Rr]egards|[Tt]hanks|[Tt]hank you|[Cc]heers|[Yy]ours(?: \\w+)?|[Ss]incerely|[Bb]est wishes|[Ll]ove)[,.!]?\\s+[-–—]?\\s*)${NAME}(?=\\s*[.!]?\\s*$)`, 'gmu') },
]

/**
 * Takes personal data out of an asker's words: e-mail and web addresses, telephone numbers, postal addresses, and names
 * where people give theirs. The name, mail address and telephone number that were left as contact are taken out wherever
 * they stand, the number however it is set apart and with or without its area code.
 * @param plants words that are no one's name here, in small letters: 'rose' may be both
 */
export function scrubWords(words: string, contact: Contact, plants: ReadonlySet<string> = new Set()): Scrubbed {
  const counts = new Map<string, number>()
  const takeOut = (text: string, kind: Pattern['kind'], looks: RegExp): string => text.replace(looks, (_all, before: string) => {
    counts.set(kind, (counts.get(kind) ?? 0) + 1)
    return `${before}(${kind})`
  })
  let clean = words
  for (const { kind, looks } of PATTERNS) clean = takeOut(clean, kind, looks)
  for (const { kind, looks } of [...addressIn(contact), ...numberIn(contact)]) clean = takeOut(clean, kind, looks)
  for (const part of namesIn(contact, plants)) {
    clean = takeOut(clean, 'name', new RegExp(`()(?<![\\p{L}])${escaped(part)}(?![\\p{L}])`, 'giu'))
  }
  return { words: clean, removed: [...counts].map(([kind, count]) => ({ kind, count })) }
}

function addressIn({ email }: Contact): Pattern[] {
  if (email === undefined || email === '') return []
  return [{ kind: 'e-mail address', looks: new RegExp(`()${escaped(email)}`, 'giu') }]
}

/** Digits at the end of a number that are the same however it is dialled, and the fewest that are worth looking for. */
const LOCAL_DIGITS = 6
const FEWEST_DIGITS = 4

function numberIn({ phone }: Contact): Pattern[] {
  const digits = (phone ?? '').replaceAll(/[^0-9]/g, '')
  if (digits.length < FEWEST_DIGITS) return []
  const local = [...digits.slice(-LOCAL_DIGITS)].join(APART)
  return [{ kind: 'telephone number', looks: new RegExp(`()(?<![\\p{L}\\d])\\+?\\(?(?:\\d${APART})*${local}(?![\\p{L}\\d])`, 'gu') }]
}

/** The whole name first, then its parts; an initial or a plant's name alone would take out too much. */
function namesIn({ name }: Contact, plants: ReadonlySet<string>): string[] {
  if (name === undefined || name === '') return []
  const parts = name.split(/[\s.]+/).filter((part) => part.length >= 3 && !plants.has(part.toLowerCase()))
  return [name, ...parts]
}

function escaped(text: string): string {
  return text.replaceAll(/[\\^$.*+?()[\]{}|/-]/g, '\\$&')
}
