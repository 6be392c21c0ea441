import type { RefObject } from 'preact'
import { useCallback, useLayoutEffect } from 'preact/hooks'

/** Brings the focus to where the sheet goes on; `leaveFields` passes by what is open for writing. */
type GoHome = (leaveFields?: boolean) => void

/**
 * Keeps the focus on the sheet: whenever what had it is gone from the page, it goes to the field or the first answer
 * that the sheet is at, else to its heading. Returns the function that brings it there at once.
 * @param turn changes with every turn of the volunteer's own: then the focus moves too
 */
export function useFocusHome(sheet: RefObject<HTMLElement | null>, turn: string): GoHome {
  const goHome = useCallback<GoHome>((leaveFields = false) => {
    if (sheet.current !== null) focusHome(sheet.current, leaveFields ? PLACES : [...FIELDS, ...PLACES])
  }, [sheet])
  useLayoutEffect(() => goHome(), [turn])
  // After any drawing: a button that was pressed may have left the page, and the focus with it.
  useLayoutEffect(() => {
    const { activeElement } = document
    if (activeElement === null || activeElement === document.body || activeElement === sheet.current) goHome()
  })
  return goHome
}

function focusHome(sheet: HTMLElement, places: readonly string[]): void {
  const home = places.map(place => sheet.querySelector<HTMLElement>(place)).find(found => found !== null) ?? sheet
  if (home === document.activeElement) return
  home.focus({ preventScroll: true })
  // What is read aloud stands above the first answer: show both, and leave alone what can be read already.
  const shown = home.closest('.check, .step') ?? home
  const { top } = shown.getBoundingClientRect()
  if (top < 0 || top > window.innerHeight / 2) shown.scrollIntoView({ block: 'start' })
}

/** What is open for writing comes before the answers below it. */
const FIELDS = ['.writing input', '.picker input', '.hand-over input', '#caller-words']
/** Where the next thing to do stands, best first. */
const PLACES = ['.check .answer', '.answers .answer', '.step-title[tabindex]']
