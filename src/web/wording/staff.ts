import { enSheet, type SheetWording } from './en-sheet.js'

/** The same words where a helper reads them: what the asker said is not what 'you' said. */
export const staffWording: SheetWording = {
  ...enSheet,
  lines: { ...enSheet.lines, origin: { ...enSheet.lines.origin, said: 'from their own words' } },
  check: {
    ...enSheet.check,
    again: (said, problem, usual) => `The answer was “${said}”. Most plants with ${problem} show “${usual}”. Ask them to look once more.`,
    lastLook: 'A specialist should see this one. This look will help them; “can’t look now” hands it over at once.',
    againCalm: 'If they see the same as before, take the same answer again.',
  },
  advice: {
    ...enSheet.advice,
    turn: (answer, ask) => `If instead they saw “${answer}” at “${ask}”, it would more likely be:`,
    nothingAgainst: 'Nothing found speaks against it.',
  },
  watched: { ...enSheet.watched, why: 'It must be reported, so it is named even when it is not likely.' },
  handOver: {
    ...enSheet.handOver,
    title: 'Hand over to a specialist',
    ask: 'Hand over to a specialist',
    lead: 'Say: “A specialist reads the whole sheet, so you need not say it all again.”',
    unsettled: 'The caller could still look at this',
    tomorrowHint: 'They can look tomorrow; their private link keeps the place.',
    keepLink: 'The caller’s private link',
    haveLooked: 'They have looked',
    contactLead: 'Ask: “How may we reach you? You need not say.” Without it, read them their private link: it is their way back to the answer.',
    contactLeadNoMail: 'Ask: “How may we reach you? You need not say.” No mail goes out from here: read them their private link, it is their way back to the answer.',
    optional: 'if they like',
    note: 'What else should the specialist know? Ask: “Is there more we should know?”',
    submit: 'Hand the sheet over',
    privacy: 'Say: “Only specialists see this, and only for this sheet.”',
    badEmail: 'That does not look like an email address. Ask them to spell it, or leave it empty.',
  },
}
