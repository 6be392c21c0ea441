import { LRUCache } from 'lru-cache'
import { z } from 'zod'
import { FindingOrigin, Language } from '../../../shared/index.js'
import type { Plausible } from '../../season/index.js'
import type { CaseRow } from '../../store/index.js'

/** Evidence as kept: plain names, which the guide of today may or may not still know. */
export const KeptEvidence = z.object({
  redFlags: z.array(z.string()),
  carriedOn: z.boolean(),
  start: z.object({ host: z.string(), node: z.string().nullable() }).nullable(),
  findings: z.array(z.object({ check: z.string(), answer: z.string(), from: FindingOrigin, again: z.boolean().optional() })),
})

const KeptWords = z.array(z.object({ text: z.string(), at: z.number() }))

/** The plants and complaints heard in the words, best first. */
export const KeptMatch = z.object({
  hosts: z.array(z.object({ host: z.string(), score: z.number(), words: KeptWords })),
  entries: z.array(z.object({
    host: z.string(), node: z.string(), score: z.number(), phrase: z.string(), words: KeptWords,
  })),
  // Cases opened before these were kept count as heard plainly.
  confidence: z.number().default(1),
  outOfScope: z.boolean().default(false),
})

/** What the season made likelier or less likely when the case was opened, and why. */
const KeptPlausible = z.array(z.object({
  problem: z.string(), factor: z.number().positive(),
  reasons: z.array(z.object({ code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number()])) })),
}))

export type KeptEvidence = z.infer<typeof KeptEvidence>
export type KeptFinding = KeptEvidence['findings'][number]
export type KeptMatch = z.infer<typeof KeptMatch>

/** A case as the desk works with it. */
export interface CaseFile {
  readonly id: number
  readonly link: string
  readonly revision: number
  readonly evidence: KeptEvidence
  readonly words: readonly string[]
  readonly matched: KeptMatch
  readonly askedOn: string
  readonly district: string | null
  /** The language that the asker is spoken to in. */
  readonly language: Language
  readonly openedAt: string
  readonly callOf: number | null
  /** The worked case that is only practised; null for a real case. */
  readonly practice: string | null
  /** Kept as it was when the case was opened; empty for cases from before there was a season, and for practice. */
  readonly plausible: readonly Plausible[]
}

/** Reads a case from its row. Throws when the row does not hold a case; that is a fault of the store. */
export function caseFileFromRow(row: CaseRow): CaseFile {
  return {
    id: row.id, link: row.link, revision: row.revision,
    evidence: readEvidence(row.evidence),
    words: readWords(row.words),
    matched: readMatch(row.matched),
    askedOn: row.asked_on, district: row.district, language: Language.parse(row.language), openedAt: row.opened_at, callOf: row.call_of, practice: row.practice,
    plausible: row.plausible === null ? [] : KeptPlausible.parse(JSON.parse(row.plausible)),
  }
}

/** So many texts of each kind are kept; a busy helpline works on fewer cases at once. */
const MOST_KEPT = 512

/**
 * Reads JSON of one shape, and the same text again at no cost: a change alters one of a case's three texts, and checking
 * all of them took a tenth of the time of an answer. What is read is shared, so nobody may change it.
 */
function reading<Shape extends object>(shape: z.ZodType<Shape>): (text: string) => Shape {
  const kept = new LRUCache<string, Shape>({ max: MOST_KEPT })
  return (text) => {
    const known = kept.get(text)
    if (known !== undefined) return known
    const value = shape.parse(JSON.parse(text))
    kept.set(text, value)
    return value
  }
}

const readEvidence = reading(KeptEvidence)
const readWords = reading(z.array(z.string()))
const readMatch = reading(KeptMatch)
