import { useRef } from 'preact/hooks'
import type { CaseView } from '../../../shared/index.js'

/** The answer written last, with what stood on its line before; null for a line that was empty. */
export interface LastAnswer {
  readonly check: string
  readonly answer: string
  readonly before: string | null
}

/**
 * The last answer given on this sheet, found by comparing each state of the case with the one before. After a reload it
 * is the newest line that was asked; what was heard in the words is no answer of the volunteer's to undo.
 */
export function useLastAnswer(view: CaseView | null): LastAnswer | null {
  const known = useRef<{ view: CaseView | null, last: LastAnswer | null }>({ view: null, last: null })
  if (view !== null && known.current.view !== view) {
    known.current = { view, last: lastAnswerOf(known.current.view, view, known.current.last) }
  }
  return known.current.last
}

/** The last answer of the case as it stands, from the state before (null when the sheet was just opened) and the answer known then. */
export function lastAnswerOf(earlier: CaseView | null, now: CaseView, known: LastAnswer | null): LastAnswer | null {
  const asked = now.lines.filter(line => line.from === 'asked')
  const before = new Map(earlier?.lines.map(line => [line.check.id, line.answer]))
  const changed = earlier === null ? undefined : asked.find(line => before.get(line.check.id) !== line.answer)
  // An undone change of an earlier line is no new answer to undo in turn.
  const isUndo = changed !== undefined && known?.check === changed.check.id && known.before === changed.answer
  if (changed !== undefined && !isUndo) return { check: changed.check.id, answer: changed.answer, before: before.get(changed.check.id) ?? null }
  const stands = known !== null && asked.some(line => line.check.id === known.check && line.answer === known.answer)
  if (stands) return known
  const newest = asked.at(-1)
  return newest === undefined ? null : { check: newest.check.id, answer: newest.answer, before: null }
}
