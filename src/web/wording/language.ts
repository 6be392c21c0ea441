import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { en, type Wording } from './en.js'

/** Languages the panel can speak. A new one is two files beside `en.ts` and `en-sheet.ts`, a row here and one in `sheet-language.ts`. */
export const languages: Readonly<Record<string, Wording>> = { en }

/** The language code we have for a tag such as 'en-GB', or null when we have none for it. */
export function spokenLanguage(tag: string): string | null {
  const code = tag.trim().toLowerCase().split('-')[0] ?? ''
  return Object.hasOwn(languages, code) ? code : null
}

const WordingContext = createContext<Wording>(en)
export const WordingProvider = WordingContext.Provider

/** The words of the language this part of the screen speaks. */
export function useWording(): Wording {
  return useContext(WordingContext)
}
