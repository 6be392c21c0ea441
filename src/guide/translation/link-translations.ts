import { closestNames } from '../closest-names.js'
import type { Report } from '../parse.js'
import type { Place } from '../source-file.js'
import { holdTranslation } from './hold-translation.js'
import { idOf, type Original, type OriginalKind } from './texts-of.js'
import type { HeldTranslation, LanguageWordsDraft, TranslationDraft } from './translation-draft.js'

/**
 * Finds the original of every translation and holds it against it. Reports translations of nothing, two of one file in
 * one language, and files not named for their id; those are left out.
 * @param originals every file with words, by kind and id
 */
export function linkTranslations(
  drafts: readonly TranslationDraft[], originals: ReadonlyMap<OriginalKind, ReadonlyMap<string, Original>>, report: Report,
): HeldTranslation[] {
  const first = new Map<string, Place>()
  return drafts.flatMap((draft): HeldTranslation[] => {
    const { id, of, language } = draft
    const name = `${of} ${id.value} ${language}`
    const before = first.get(name)
    if (before !== undefined) {
      report({
        severity: 'error', code: 'DUPLICATE_NAME', at: [id.at, before], nearest: [],
        message: `The ${of} "${id.value}" is translated twice into "${language}". Expected one file.`,
      })
      return []
    }
    first.set(name, id.at)
    const ofKind = originals.get(of) ?? new Map<string, Original>()
    const original = ofKind.get(id.value)
    if (original === undefined) {
      report({
        severity: 'error', code: 'NOT_IN_ORIGINAL', at: [id.at], nearest: closestNames(id.value, ofKind.keys()),
        message: `There is no ${of} "${id.value}" to translate. Expected the id in the file of the same name without ".${language}".`,
      })
      return []
    }
    const stem = of === 'region' ? 'region' : idOf(original)
    const file = id.at.file.path.split('/').pop() ?? ''
    if (!file.startsWith(`${stem}.${language}.`)) {
      report({
        severity: 'error', code: 'FILE_NAME', at: [id.at], nearest: [],
        message: `This file translates the ${of} "${id.value}" but is named "${file}". Expected ${stem}.${language}.yaml.`,
      })
    }
    return [holdTranslation(draft, original, report)]
  })
}

/** The lay words and word sets of each language; a second file of one kind in one language is reported. */
export function linkLanguageWords(drafts: readonly LanguageWordsDraft[], report: Report): readonly LanguageWordsDraft[] {
  const kept: LanguageWordsDraft[] = []
  for (const draft of drafts) {
    const before = kept.find(({ language, words }) => language === draft.language && words.kind === draft.words.kind)
    if (before === undefined) kept.push(draft)
    else {
      report({
        severity: 'error', code: 'DUPLICATE_NAME', at: [draft.at, before.at], nearest: [],
        message: `There are two files of ${draft.words.kind} in "${draft.language}". Expected at most one.`,
      })
    }
  }
  return kept
}
