import type { z } from 'zod'
import { closestNames } from '../closest-names.js'
import type { Report, YamlPath } from '../parse.js'
import { translatedText, translatedTexts } from '../yaml-shapes.js'
import { englishMark } from './english-mark.js'
import { type Original, type TextSlot, textsOf } from './texts-of.js'
import type { HeldText, HeldTranslation, TranslationDraft } from './translation-draft.js'

/** Keys of a translation file that are no words of the original. */
const HEAD_KEYS = ['complete', 'accepts', 'made from']

/**
 * Holds a translation against the file it translates: every text is good, missing or out of date. Keys that the
 * original does not have, and values of the wrong kind, are reported as errors with their place and the nearest key.
 */
export function holdTranslation(draft: TranslationDraft, original: Original, report: Report): HeldTranslation {
  const slots = textsOf(original)
  reportUnknownKeys(draft, slots, report)
  return { draft, original, texts: slots.map((slot) => holdText(draft, slot, report)) }
}

function holdText(draft: TranslationDraft, slot: TextSlot, report: Report): HeldText {
  const at = draft.parsed.at(slot.path)
  if (slot.kind === 'hearings') return { slot, at, words: draft.hear.length === 0 ? null : [], state: draft.hear.length === 0 ? 'missing' : 'good' }
  const words = wordsAt(draft, slot, report)
  if (words === null) return { slot, at, words, state: 'missing' }
  if (slot.kind === 'phrases' || slot.kind === 'label') return { slot, at, words, state: 'good' }
  const isOfToday = draft.madeFrom.has(englishMark(slot.english)) && words.length === slot.english.length
  return { slot, at, words, state: isOfToday ? 'good' : 'out of date' }
}

function wordsAt(draft: TranslationDraft, slot: TextSlot, report: Report): readonly string[] | null {
  const written = valueAt(draft.parsed.values, slot.path)
  if (written === undefined) return null
  const isOne = slot.kind === 'text' || slot.kind === 'label'
  const shape: z.ZodType<string | string[] | null> = isOne ? translatedText : translatedTexts
  const read = shape.safeParse(written)
  if (!read.success) {
    report({
      severity: 'error', code: 'SHAPE', at: [draft.parsed.at(slot.path)], nearest: [],
      message: `"${slot.path.join(' → ')}" is not what it is in English. Expected ${isOne ? 'one text' : 'a list of texts'}; left empty it counts as not translated yet.`,
    })
    return null
  }
  const words = typeof read.data === 'string' ? [read.data] : read.data ?? []
  return words.length === 0 ? null : words.map((word) => word.normalize('NFC'))
}

/** Walks the file beside the keys that the original has, and reports the first key on each branch that it has not. */
function reportUnknownKeys(draft: TranslationDraft, slots: readonly TextSlot[], report: Report): void {
  const known = new Map<string, Set<string>>([['[]', new Set([draft.of, ...HEAD_KEYS])]])
  for (const { path } of slots) {
    path.forEach((key, depth) => {
      const above = JSON.stringify(path.slice(0, depth))
      const keys = known.get(above)
      if (keys === undefined) known.set(above, new Set([key]))
      else keys.add(key)
    })
  }
  const walk = (value: unknown, path: readonly string[]): void => {
    const keys = known.get(JSON.stringify(path))
    if (keys === undefined || value === null || value === undefined) return
    if (typeof value !== 'object' || Array.isArray(value)) {
      report({
        severity: 'error', code: 'SHAPE', at: [draft.parsed.at(path)], nearest: [],
        message: `${path.length === 0 ? 'This file' : `"${path.join(' → ')}"`} is no group of keys. Expected some of these below it: ${[...keys].slice(0, 12).join(', ')}.`,
      })
      return
    }
    for (const [key, inner] of Object.entries(value)) {
      if (keys.has(key)) walk(inner, [...path, key])
      else reportUnknownKey(draft, [...path, key], keys, report)
    }
  }
  walk(draft.parsed.values, [])
}

function reportUnknownKey(draft: TranslationDraft, path: YamlPath, keys: ReadonlySet<string>, report: Report): void {
  const key = String(path[path.length - 1])
  // No error: whoever changes the English must not be held back by a translation, nor the service by either.
  report({
    severity: 'warning', code: 'NOT_IN_ORIGINAL', at: [draft.parsed.keyAt(path)], nearest: closestNames(key, keys),
    message: `The ${draft.of} "${draft.id.value}" has no words under "${key}" here. Expected a key of the original that has words: ${[...keys].slice(0, 12).map((name) => `"${name}"`).join(', ')}${keys.size > 12 ? ' …' : ''}.`,
  })
}

function valueAt(values: unknown, path: YamlPath): unknown {
  let here = values
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Record<string | number, unknown>)[step]
  }
  return here
}
