/**
 * The words of the first paint, in English: the question, the cards, what goes wrong. All others are in `en-sheet.ts`
 * and come later. Kept to short words and short sentences: askers may be worried.
 */
export const en = {
  sheetTitle: 'Plant question sheet',
  languageLabel: 'Language',
  demonstration: 'This is a demonstration. The helpline and its phone numbers are made up.',
  opening: 'Fetching your sheet …',

  question: {
    title: 'What is wrong with your plant?',
    lead: 'Say it as you would to a neighbour. Name the plant if you can, and what you see.',
    label: 'Your question',
    district: 'Where is the plant?',
    anyDistrict: 'I would rather not say',
    examplesTitle: 'For example',
    examples: [
      'The leaves of my rose have black spots and fall off',
      'Something eats holes in my lettuce at night',
      'My tomatoes have a dark, sunken patch underneath',
    ],
    submit: 'Start the sheet',
    sending: 'Starting …',
    empty: 'Please write a few words about the plant first.',
    tooLong: (max: number) => `That is longer than we can take. Please keep it under ${max} letters.`,
    privacy: 'No name and no account needed.',
  },

  notAsked: {
    title: 'We cannot answer this one',
    lead: 'You can ask us about a plant, a lawn or a weed: what ails it, what eats it, and what to do. Please write in English or Spanish. Say which plant it is and what you see.',
    kept: 'Your words are kept below. You can change them and ask again.',
    submit: 'Ask again',
  },

  flags: {
    emergency: 'Act now',
    caution: 'Take care',
    doNow: 'Do this now',
    doNot: 'Do not',
    call: 'Call',
  },

  /** The two answers that every check takes, as they stand on a filled-in line. */
  calm: { notSure: 'not sure', cantLook: 'can\'t look now' },

  trouble: {
    lost: 'We cannot reach the helpline just now. What you wrote is kept.',
    lostAnswer: (answer: string) => `We cannot reach the helpline just now. Your answer “${answer}” is kept.`,
    noNetwork: 'No network just now.',
    goOn: 'You can go on. What you answer is kept, and goes out when the network is back.',
    lostSeveral: (count: number) => `${count} things you wrote are kept. They go out one by one when the network is back.`,
    busy: (detail: string) => `${detail} What you wrote is kept.`,
    partMissing: 'We could not load the rest of the sheet. What you wrote is kept.',
    trying: 'We keep trying on our own.',
    again: 'Try again now',
    stale: 'This sheet was changed elsewhere, perhaps in another window. Here is how it stands now. Please look and answer again.',
    gone: 'We cannot find this sheet. The link may be cut short, or the sheet is no longer kept.',
    refused: (detail: string) => `That did not work: ${detail}`,
    close: 'Close this note',
  },

  announce: {
    check: (number: number) => `Line ${number}: a new check.`,
    again: (number: number) => `Line ${number}: please look once more.`,
    place: 'Please confirm the plant.',
    conclude: 'The sheet has an answer.',
    handOver: 'We cannot settle this alone.',
    reply: 'A specialist has answered.',
  },
}

export type Wording = typeof en
