import type { Language } from '../../../shared/index.js'

/** The language of an asker as colleagues name it ('Spanish'), or null for English, which needs no word. */
export function otherLanguage(language: Language): string | null {
  return language === 'en' ? null : new Intl.DisplayNames('en', { type: 'language' }).of(language) ?? language
}
