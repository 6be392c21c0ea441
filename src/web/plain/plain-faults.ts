import { LONGEST_WORDS } from '../case/longest-words.js'
import { en } from '../wording/en.js'
import { enPlain } from '../wording/en-plain.js'
import { enSheet } from '../wording/en-sheet.js'

/** What can be wrong with a form, in the panel's own words. */
export const plainFaults = {
  'no question': en.question.empty,
  'long question': en.question.tooLong(LONGEST_WORDS),
  'no words': enPlain.noWords,
  'bad link': enPlain.found.bad,
  'bad email': enSheet.handOver.badEmail,
  'bad phone': enSheet.handOver.badPhone,
  'long name': enPlain.longName,
  'no photo': enPlain.photo.none,
  'stale': en.trouble.stale,
} as const
