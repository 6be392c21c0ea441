import { Language } from '../../../shared/index.js'
import { type DeskWording, en } from './en.js'
import { es } from './es.js'

export type { DeskWording } from './en.js'

const wordings: Readonly<Record<Language, DeskWording>> = { en, es }

/** What the service itself says, in the language of a guide; in English for a language that it does not speak. */
export function wordingOf({ language }: { readonly language: string }): DeskWording {
  const known = Language.safeParse(language)
  return known.success ? wordings[known.data] : en
}
