import { readFiles } from '../read-files.js'
import type { SourceFile } from '../source-file.js'
import { closestNames } from '../closest-names.js'
import { refreshTranslation } from './refresh-translation.js'
import { idOf, type Original } from './texts-of.js'
import { fileState, languageRows, originalsNamed } from './translation-state.js'

/** A translation file to be written. */
export interface RefreshedFile {
  readonly path: string
  readonly text: string
  /** False when the file stands as it should. */
  readonly isChanged: boolean
  /** How many texts are missing and out of date after writing. */
  readonly missing: number
  readonly outOfDate: number
}

/** What refreshing came to: the files, or that nothing has the name, with the nearest names. */
export type Refreshed = { readonly files: readonly RefreshedFile[] } | { readonly unknown: string; readonly nearest: readonly string[] }

/**
 * Writes or refreshes the translation files of a host (with its problems and checks), the region, the red flags or one
 * file. Faults in files are not told here: `frondline proof` does.
 * @param files every file of the guide
 * @param name a host's id, `region`, `red-flags`, or a file such as `checks/leaf-spots`
 */
export function refreshFiles(files: readonly SourceFile[], language: string, name: string, options: { readonly checked: boolean }): Refreshed {
  const linked = readFiles(files, () => undefined)
  const originals = originalsNamed(linked, name)
  if (originals.length === 0) return { unknown: name, nearest: closestNames(name, ['region', 'red-flags', ...linked.hosts.keys()]) }
  return {
    files: originals.map((original): RefreshedFile => {
      const state = fileState(linked, original, language)
      const before = state.translation?.draft.parsed.file
      const text = refreshTranslation(original, state.translation, options)
      return {
        path: before?.path ?? translationPath(original, language), text, isChanged: text !== before?.text,
        missing: state.missing.length, outOfDate: options.checked ? 0 : state.outOfDate.length,
      }
    }),
  }
}

/** How far a guide is translated into a language, as `frondline proof --language` tells it. */
export interface LanguageReport {
  readonly language: string
  readonly rows: readonly {
    readonly name: string
    readonly claimed: boolean
    readonly files: readonly { readonly path: string; readonly isThere: boolean; readonly missing: readonly string[]; readonly outOfDate: readonly string[] }[]
  }[]
}

/** The report on one language, from every file of the guide. */
export function languageReport(files: readonly SourceFile[], language: string): LanguageReport {
  const linked = readFiles(files, () => undefined)
  return {
    language,
    rows: languageRows(linked, language).map(({ name, claimed, files: states }) => ({
      name, claimed,
      files: states.map(({ original, translation, missing, outOfDate }) => ({
        path: translation?.draft.parsed.file.path ?? translationPath(original, language), isThere: translation !== null, missing, outOfDate,
      })),
    })),
  }
}

/** Where the translation of a file stands: beside it, with the language before the ending. */
function translationPath(original: Original, language: string): string {
  const { file } = original.kind === 'region' ? original.at : original.id.at
  const folder = file.path.split('/').slice(0, -1)
  return [...folder, `${original.kind === 'region' ? 'region' : idOf(original)}.${language}.yaml`].join('/')
}
