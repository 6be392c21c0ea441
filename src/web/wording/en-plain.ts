/** The words that only the pages without script need, in English. Short words, short sentences. */
export const enPlain = {
  lead: 'These pages work without JavaScript. Press a button to send each answer.',
  title: {
    opening: 'Ask a plant question', gone: 'We cannot find this sheet', refused: 'That did not work',
    check: (ask: string) => ask, place: 'Which plant is it about?', card: 'Do this first', conclude: (name: string) => name,
    handOver: 'Ask a specialist', waiting: 'Your sheet is with a specialist', reply: 'The specialist’s answer',
  },
  goOn: 'Go on',
  plant: 'Choose the plant',
  pick: 'from the list',
  found: {
    title: 'Have you a private link?', label: 'Your private link', submit: 'Open my sheet',
    bad: 'That is not a whole private link. Please copy all of it.',
  },
  photo: {
    choose: 'Choose a photo', add: 'Add this photo', none: 'Please choose a photo first.',
    one: 'One at a time, as JPEG, PNG or WebP, of up to 12 megabytes.',
    first: 'Add your photos first, then hand over. A photo that is chosen but not added is not sent.',
  },
  link: 'Copy this link and keep it. It is the way back to your sheet.',
  back: 'Back to the sheet',
  look: 'Look for an answer',
  page: 'Use the page’s own buttons to go on. Your browser’s way back shows an older sheet.',
  print: 'To print this sheet, use your browser’s own print command.',
  noWords: 'Please write a few words first.',
  longName: 'That name is longer than we can take.',
  fault: 'Please look at this:',
}

export type PlainWording = typeof enPlain
