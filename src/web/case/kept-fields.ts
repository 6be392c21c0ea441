import { useState } from 'preact/hooks'

/** What stands in the fields of one form. */
export type Fields = Readonly<Record<string, string | boolean | readonly string[]>>

/** Where fields are kept: with the screen only, for contact details, or in the browser tab, so that a reload costs nothing either. */
export type Keeping = 'screen' | 'tab'

/**
 * The fields of a form that may be left and opened again: what was written is there until it is sent (`forgetFields`) or
 * taken out by hand. `place` names the form among all others of this browser tab; a change of it reads the other form.
 */
export function useKeptFields<Kept extends Fields>(place: string, empty: Kept, keeping: Keeping): readonly [Kept, (part: Partial<Kept>) => void] {
  const [, draw] = useState(0)
  const fields = readFields(place, empty)
  return [fields, part => {
    writeFields(place, { ...readFields(place, empty), ...part }, keeping)
    draw(count => count + 1)
  }]
}

/** The fields kept for a form, or the empty ones. Fields kept by an older page that no longer fit are left out. */
export function readFields<Kept extends Fields>(place: string, empty: Kept): Kept {
  const kept = onScreen.get(place) ?? readTab(place)
  if (kept === null) return empty
  return Object.fromEntries(Object.entries(empty).map(([name, none]) => [name, sameKind(kept[name], none) ? kept[name] : none])) as Kept
}

export function writeFields(place: string, fields: Fields, keeping: Keeping): void {
  onScreen.set(place, fields)
  if (keeping === 'tab') {
    try { sessionStorage.setItem(keyOf(place), JSON.stringify(fields)) } catch { /* Then they last until the page is left. */ }
  }
}

/** Forgets the fields of a form, once what they held was sent. */
export function forgetFields(place: string): void {
  onScreen.delete(place)
  try { sessionStorage.removeItem(keyOf(place)) } catch { /* Nothing was kept there. */ }
}

/** Forgets a form of one text, once that very text stands on the sheet; one that was written on since stays. */
export function forgetIfSent(place: string, said: string | undefined): void {
  if (said !== undefined && readFields(place, { text: '' }).text.trim() === said) forgetFields(place)
}

const onScreen = new Map<string, Fields>()

function readTab(place: string): Record<string, unknown> | null {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(place)) ?? 'null')
    return typeof kept === 'object' && kept !== null ? { ...kept } : null
  } catch {
    return null
  }
}

function sameKind(kept: unknown, none: Fields[string]): boolean {
  if (typeof none !== 'object') return typeof kept === typeof none
  return Array.isArray(kept) && kept.every(each => typeof each === 'string')
}

function keyOf(place: string): string {
  return `frondline form: ${place}`
}
