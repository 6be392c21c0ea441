/** Brings the sheet of an open case: everything below its cards. */
export const loadFilledSheet = () => import('./filled-sheet.js').then(part => part.FilledSheet)

/** Fetches what an open case will need while the asker is still writing. Should it fail, that is told when it is needed. */
export function fetchPartsAhead(): void {
  const start = () => { loadFilledSheet().catch(() => undefined) }
  if (typeof requestIdleCallback === 'function') requestIdleCallback(start, { timeout: LATEST_MS })
  else setTimeout(start, LATEST_MS)
}

const LATEST_MS = 2_000
