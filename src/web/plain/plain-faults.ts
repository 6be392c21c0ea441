import type { Language } from '../../../shared/index.js'
import { LONGEST_WORDS } from '../case/longest-words.js'
import { enSheet } from '../wording/en-sheet.js'
import { plainWordings, spokenOnPages } from '../wording/plain-language.js'

export type PlainFaultName = 'no question' | 'long question' | 'no words' | 'bad link' | 'bad email' | 'bad phone' | 'long name' | 'no photo' | 'stale'

/** What can be wrong with a form, in the panel's own words. */
export function plainFaults(language: Language): Readonly<Record<PlainFaultName, string>> {
  const { wording: { question, trouble }, sheet } = spokenOnPages[language]
  const { handOver } = sheet ?? enSheet
  const plain = plainWordings[language]
  return {
    'no question': question.empty,
    'long question': question.tooLong(LONGEST_WORDS),
    'no words': plain.noWords,
    'bad link': plain.found.bad,
    'bad email': handOver.badEmail,
    'bad phone': handOver.badPhone,
    'long name': plain.longName,
    'no photo': plain.photo.none,
    'stale': trouble.stale,
  }
}
