import type { CaseView } from '../../../shared/index.js'

/** The number of a check's line on the sheet; the next free one when it has none yet. */
export function lineNumberOf(view: CaseView, check: string): number {
  const place = view.lines.findIndex(line => line.check.id === check)
  return (place < 0 ? view.lines.length : place) + 1
}
