import type { AnyDraft } from '../any-draft.js'
import { closestNames } from '../closest-names.js'
import { fit, placing } from '../fit-shape.js'
import type { ParsedFile, Report } from '../parse.js'
import { shapeHearings } from '../shape-hearings.js'
import { shapeLayWords, shapeWordSets } from '../shape-words.js'
import { translationHeadShape } from '../yaml-shapes.js'
import type { OriginalKind } from './texts-of.js'

/** The kind of original that each folder of translations belongs to, and the key that holds its id. */
export const translatedFolders: ReadonlyMap<string, OriginalKind> = new Map([
  ['checks', 'check'], ['problems', 'problem'], ['hosts', 'host'], ['red-flags', 'red flag'],
])

/**
 * Turns a parsed file with a language in its name into a draft. Only what every such file has is looked at here; its
 * words are held against the original when all files are read.
 */
export function shapeLanguageFile(
  parsed: ParsedFile, { folder, original, language }: { readonly folder: string; readonly original: string; readonly language: string }, report: Report,
): AnyDraft | null {
  if (/^lay-words\./.test(original)) {
    const words = shapeLayWords(parsed, report)
    return words === null ? null : { kind: 'words of a language', language, at: words.at, words }
  }
  if (/^word-sets\./.test(original)) {
    const words = shapeWordSets(parsed, report)
    return words === null ? null : { kind: 'words of a language', language, at: words.at, words }
  }
  const kind = /^region\./.test(original) ? 'region' : translatedFolders.get(folder)
  if (kind === undefined) {
    report({
      severity: 'error', code: 'WRONG_FOLDER', at: [parsed.at([])], nearest: closestNames(folder, translatedFolders.keys()),
      message: `No translation is read from the folder "${folder}". Expected one of: ${[...translatedFolders.keys()].join(', ')}, beside the original.`,
    })
    return null
  }
  const head = fit(translationHeadShape, parsed, report)
  if (head === null) return null
  const here = placing(parsed)
  const id: unknown = head[kind]
  if (typeof id !== 'string') {
    report({
      severity: 'error', code: 'SHAPE', at: [parsed.at([kind])], nearest: [],
      message: `The key "${kind}" is missing or no name. Expected the id of the file that this one translates, as in ${original}.`,
    })
    return null
  }
  return {
    kind: 'translation', language, of: kind, id: here.text(id, [kind]),
    complete: head.complete === true || head.complete === 'yes',
    madeFrom: new Set((head['made from'] ?? '').split(/\s+/).filter((mark) => mark !== '')),
    ...shapeHearings(head.hear ?? [], here), accepts: here.accepts(head.accepts), parsed,
  }
}
