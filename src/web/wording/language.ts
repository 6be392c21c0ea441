import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Language } from '../../../shared/index.js'
import { en, type Wording } from './en.js'
import type { Spoken } from './spoken.js'

/** English is in the first paint, and the sheet brings its English words itself. */
export const english: Spoken = { language: 'en', wording: en, sheet: null }

/** Each language by its own name, as those who need it read it. A new one is a row here and in `shared/language.ts`, and its files. */
export const languages: Readonly<Record<Language, string>> = { en: 'English', es: 'Español' }

/** Brings the words of a language; those but English come in a file of their own. */
export function bringWords(language: Language): Promise<Spoken> {
  switch (language) {
    case 'en': return Promise.resolve(english)
    case 'es': return import('./spoken-es.js').then(part => part.spanish)
  }
}

/** The language we have for a tag such as 'es-MX' (BCP 47), or null when we have none for it. */
export function spokenLanguage(tag: string): Language | null {
  const code = tag.trim().toLowerCase().split('-')[0] ?? ''
  return Object.hasOwn(languages, code) ? code as Language : null
}

const SpokenContext = createContext<Spoken>(english)
export const SpokenProvider = SpokenContext.Provider

/** The words of the language this part of the screen speaks, all of them. */
export function useSpoken(): Spoken {
  return useContext(SpokenContext)
}

/** The words of the first paint. */
export function useWording(): Wording {
  return useSpoken().wording
}
