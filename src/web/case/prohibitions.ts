import type { Language } from '../../../shared/index.js'

/** Lines that say what not to do, by whether they can be read alone. */
interface Prohibitions {
  /** They say it themselves: 'Do not rub the eye.' */
  readonly whole: readonly string[]
  /** They say it only under a heading: 'Rub the eye.' */
  readonly bare: readonly string[]
}

/**
 * Sorts the lines of a red flag by whether they need the heading 'Do not'. No line is ever cut or changed: a heading can be
 * skipped by eye or by ear, and half a sentence would then say the opposite.
 */
export function sortProhibitions(lines: readonly string[], language: Language = 'en'): Prohibitions {
  const saysNo = (line: string) => SAYS_NO.en.test(line.trim()) || SAYS_NO[language].test(line.trim())
  return { whole: lines.filter(saysNo), bare: lines.filter(line => !saysNo(line)) }
}

/** How a line begins that says no by itself. A line without a translation stands in English among others. */
const SAYS_NO: Readonly<Record<Language, RegExp>> = {
  en: /^(do not|don[’']t|never|you must not|nobody|no one|nothing|avoid)\b/i,
  es: /^(no|nunca|jamás|nadie|nada|ningun[ao]?|ningún|tampoco|evite)(?=\s)/i,
}
