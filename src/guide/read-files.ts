import type { AnyDraft } from './any-draft.js'
import { type LinkedGuide, linkGuide } from './link.js'
import { parseFile, type Report } from './parse.js'
import { shapeFile } from './shape.js'
import type { SourceFile } from './source-file.js'

/** The first half of compiling: parse → shape → link. Files that do not parse or fit are reported and left out. */
export function readFiles(files: readonly SourceFile[], report: Report): LinkedGuide {
  const drafts = files.flatMap((file): AnyDraft[] => {
    const parsed = parseFile(file, report)
    const draft = parsed === null ? null : shapeFile(parsed, report)
    return draft === null ? [] : [draft]
  })
  return linkGuide(drafts, files[0] ?? null, report)
}
