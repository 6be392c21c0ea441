import type { Language } from '../../../shared/index.js'
import { languages } from '../wording/language.js'

interface LanguageChoiceProps {
  readonly language: Language
  readonly label: string
  readonly onLanguage: (language: Language) => void
}

/** The other languages, each by its own name and said in its own way: quiet, but there from the first paint. */
export function LanguageChoice({ language, label, onLanguage }: LanguageChoiceProps) {
  const others = (Object.keys(languages) as Language[]).filter(other => other !== language)
  return (
    <p class="languages" role="group" aria-label={label}>
      {others.map(other => <button type="button" key={other} class="quiet" lang={other} onClick={() => onLanguage(other)}>{languages[other]}</button>)}
    </p>
  )
}
