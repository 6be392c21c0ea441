/** What each kind of file may hold, as zod shapes with the authors' own key names. */
import { z } from 'zod'
import { frequencyWords } from './frequency-words.js'
import { favourableWeathers, problemKinds } from './guide.js'

const id = z.string('a name').regex(/^[a-z0-9][a-z0-9-]*$/, 'a name of small letters, digits and hyphens')
const text = z.string('text').trim().min(1, 'some text')
const phrase = text.max(200, 'at most 200 characters')
const isoDate = z.iso.date('a date like 2026-03-02')
const accepts = z.array(z.strictObject({ warning: text, because: text })).optional()
const sources = z.union(
  [z.literal('common practice'), z.array(z.strictObject({ title: text, by: text, year: z.int().min(1700).max(2100).optional() })).min(1)],
  'a list of { title, by, year }, or the words: common practice',
)
const reviewed = z.strictObject({ on: isoDate, by: text.optional() })

export const efforts = ['glance', 'hand lens', 'dig', 'wait a day', 'send a sample'] as const
export const costs = ['ordinary', 'costly', 'regulated', 'dangerous'] as const
export const commonnessWords = ['very common', 'common', 'occasional', 'rare'] as const

export const checkShape = z.strictObject({
  check: id,
  ask: text,
  how: text,
  why: text,
  effort: z.enum(efforts),
  chief: z.boolean().optional(),
  answers: z.record(phrase, z.strictObject({ 'said as': z.array(phrase).optional(), 'red flag': id.optional() }).nullable()),
  accepts,
})

export const problemShape = z.strictObject({
  problem: id,
  name: text,
  what: text,
  agent: text.optional(),
  kind: z.enum(problemKinds),
  hosts: z.record(id, z.enum(commonnessWords)),
  season: z.strictObject({ months: z.array(z.int().min(1).max(12)).min(1) }).optional(),
  'favoured by': z.array(z.enum(favourableWeathers)).min(1).optional(),
  'seen between': text.optional(),
  'seen after': text.optional(),
  cost: z.enum(costs),
  shows: z.record(id, z.record(phrase, z.enum(frequencyWords))),
  'same sign': z.array(z.array(id).min(2, 'at least two checks')).optional(),
  'look-alikes': z.array(id).optional(),
  advice: z.strictObject({
    'bottom line': text,
    'do now': z.array(text),
    'not worth doing': z.array(text).optional(),
    'next year': z.array(text).optional(),
    spray: text,
  }),
  cautions: z.array(text).optional(),
  watch: z.strictObject({ escalate: text.optional() }).optional(),
  sources,
  reviewed,
  accepts,
})

const target = z.union(
  [
    id,
    z.strictObject({ problem: id }),
    z.strictObject({ 'hand over': text }),
    z.strictObject({ host: id, node: id.optional() }),
    z.null(),
  ],
  'a node\'s name, { problem: id }, { hand over: "why" } or { host: id, node: name }',
)

export const hostShape = z.strictObject({
  host: id,
  name: text,
  called: z.array(phrase).min(1, 'at least one name'),
  start: id,
  nodes: z.record(id, z.strictObject({
    entry: z.array(phrase).min(1, 'at least one phrase').optional(),
    check: id,
    answers: z.record(phrase, target),
    'not sure': target.optional(),
  })),
  accepts,
})

/** A word that a red flag listens for, or words in a row with choices. */
const wordPattern = z.string().trim().min(1).max(600, 'at most 600 characters: gather the choices in a set of word-sets.yaml')

/** What a red flag listens for. */
export const hearShape = z.array(z.union([
  z.strictObject({
    'all of': z.array(z.array(wordPattern).min(1)).min(1),
    within: z.int().min(1).max(100).optional(),
    'in order': z.literal(true).optional(),
    unless: z.array(z.array(wordPattern).min(1)).optional(),
    'unless reach': z.int().min(0).max(40).optional(),
  }),
  z.strictObject({ phrases: z.array(wordPattern).min(1), unless: z.array(z.array(wordPattern).min(1)).optional(), 'unless reach': z.int().min(0).max(40).optional() }),
], '{ all of: [[...], ...] } or { phrases: [...] }'))

export const redFlagShape = z.strictObject({
  'red flag': id,
  title: text,
  level: z.enum(['emergency', 'caution']),
  hear: hearShape,
  card: z.strictObject({ 'do now': z.array(text).min(1), 'do not': z.array(text).optional(), call: z.array(text) }),
  then: z.enum(['carry on', 'stop']),
  afterwards: z.strictObject({ host: id, node: id, offer: text }).optional(),
  looking: text.optional(),
  sources,
  reviewed,
  accepts,
})

export const regionShape = z.strictObject({
  region: id,
  name: text,
  helpline: text,
  demonstration: z.boolean().optional(),
  climate: text.optional(),
  units: z.enum(['metric', 'us']),
  language: z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]+)*$/, 'a language tag like en'),
  districts: z.record(id, text),
  beside: z.record(id, z.array(id).min(1, 'at least one district')).optional(),
  numbers: z.record(phrase, z.strictObject({ name: text, number: text })),
  'least public count': z.int().min(3, 'at least 3: smaller counts can point to one garden').max(50).optional(),
  'on duty mail': z.email('a mail address').optional(),
  targets: z.strictObject({
    'answer within hours': z.number().positive().max(8760),
    'urgent within hours': z.number().positive().max(8760),
    'erase contact after days': z.int().positive().max(3650),
  }),
})

export const layWordsShape = z.strictObject({
  alike: z.array(z.array(phrase).min(2, 'at least two words')),
  'other plants': z.array(phrase),
  things: z.array(phrase),
  grounds: z.array(phrase),
  errands: z.array(phrase),
  kinds: z.record(z.string().regex(/^[a-z][a-z ]*$/, 'a name of small letters and spaces'), z.array(wordPattern).min(1, 'at least one word')).optional(),
})

export const wordSetsShape = z.record(
  z.string().regex(/^[a-z][a-z -]*$/, 'a name of small letters and spaces'), z.array(wordPattern).min(1, 'at least one word'),
)

/** The keys of a translation file that are not words; the words' own keys are those of the original. */
export const translationHeadShape = z.looseObject({
  complete: z.union([z.boolean(), z.enum(['yes', 'no'])], 'yes or no').optional(),
  'made from': text.optional(),
  hear: hearShape.nullish(),
  accepts,
})

/** What may stand where a translation has words; empty means not translated yet. */
export const translatedText = text.nullable()
export const translatedTexts = z.array(text).nullable()

export const casebookShape = z.strictObject({
  casebook: id,
  cases: z.array(z.strictObject({
    case: id,
    words: text,
    on: isoDate,
    district: id.optional(),
    host: id.optional(),
    findings: z.record(id, phrase).optional(),
    ends: z.union([
      z.strictObject({ problem: id }),
      z.strictObject({ 'hand over': z.literal(true) }),
      z.strictObject({ 'red flag': id }),
    ], '{ problem: id }, { hand over: true } or { red flag: id }'),
    'also right': z.array(id).optional(),
  })).min(1, 'at least one case'),
})
