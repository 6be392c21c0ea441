import type { Language } from '../../../shared/index.js'
import { enPlain, type PlainWording } from './en-plain.js'
import { esPlain } from './es-plain.js'
import { english, useSpoken } from './language.js'
import type { Spoken } from './spoken.js'
import { spanish } from './spoken-es.js'

/** Every language at hand, for pages that are drawn on the server. */
export const spokenOnPages: Readonly<Record<Language, Spoken>> = { en: english, es: spanish }

/** The words of the pages without script, by language. */
export const plainWordings: Readonly<Record<Language, PlainWording>> = { en: enPlain, es: esPlain }

/** The words of a page without script, in the language that it speaks. */
export function usePlainWording(): PlainWording {
  return plainWordings[useSpoken().language]
}
