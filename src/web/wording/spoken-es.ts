import { es } from './es.js'
import { esSheet } from './es-sheet.js'
import type { Spoken } from './spoken.js'

/** All that the panel says in Spanish, loaded when it is wanted. */
export const spanish: Spoken = { language: 'es', wording: es, sheet: esSheet }
