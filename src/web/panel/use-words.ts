import { useEffect, useState } from 'preact/hooks'
import type { Language } from '../../../shared/index.js'
import { bringWords, english } from '../wording/language.js'
import type { Spoken } from '../wording/spoken.js'

/**
 * The words of a language. While they are on their way those before stay, or null where there were none yet. Should they
 * not come, English is better than an empty sheet.
 */
export function useWords(language: Language): Spoken | null {
  const [spoken, setSpoken] = useState<Spoken | null>(brought.get(language) ?? null)
  useEffect(() => {
    let wanted = true
    const here = brought.get(language)
    if (here !== undefined) setSpoken(here)
    else {
      bringWords(language).then(words => {
        brought.set(language, words)
        if (wanted) setSpoken(words)
      }, () => { if (wanted) setSpoken(now => now ?? english) })
    }
    return () => { wanted = false }
  }, [language])
  return spoken
}

/** Words that came once are there at once from then on. */
const brought = new Map<Language, Spoken>([['en', english]])
