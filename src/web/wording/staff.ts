import { enSheet, type SheetWording } from './en-sheet.js'

/** The same words where a helper reads them: what the asker said is not what 'you' said. */
export const staffWording: SheetWording = {
  ...enSheet,
  lines: { ...enSheet.lines, origin: { ...enSheet.lines.origin, said: 'from their own words' } },
  check: {
    ...enSheet.check,
    again: (said, problem, usual) => `The answer was “${said}”. Most plants with ${problem} show “${usual}”. Ask them to look once more.`,
    againCalm: 'If they see the same as before, take the same answer again.',
  },
  advice: {
    ...enSheet.advice,
    turn: (answer, ask) => `If instead they saw “${answer}” at “${ask}”, it would more likely be:`,
    nothingAgainst: 'Nothing found speaks against it.',
  },
  watched: { ...enSheet.watched, why: 'It must be reported, so it is named even when it is not likely.' },
  handOver: { ...enSheet.handOver, tomorrowHint: 'They can look tomorrow; their private link keeps the place.', haveLooked: 'They have looked' },
}
