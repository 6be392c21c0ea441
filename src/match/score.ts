/**
 * Every weight and cut-off of the matching, in one place. All shares are 0 to 1.
 * Chosen by trying lay questions and the casebook against the demonstration guide, moving one weight at a time and
 * keeping the middle of the range where nothing got worse; common practice, no published source.
 */
export const WEIGHTS = {
  /**
   * Words of a question that are weighed for hosts and entries; red flags listen to all. A question on the wire has at
   * most 4,000 characters, about 800 words. 400 to 1,000 is sensible; the bound keeps 20,000 characters under 50 ms.
   */
  wordsWeighed: 800,
  /**
   * Different unknown words that are looked up for a likely misspelling. Each costs up to a millisecond, for hosts
   * (single words, then pairs) and again for entries. 8 to 20.
   */
  wordsRespelled: 12,
  /**
   * Likewise for words of danger, which may come after any number of names and rare words. Each costs less than a tenth
   * of a millisecond, so that the rarest text stays within some 20 ms. 100 to 300.
   */
  dangersRespelled: 200,
  /** Words longer than this are not respelled: no plant or complaint is. */
  longestRespelled: 20,

  /** Host named in another form than the guide lists ("apples" for "apple"). Below an exact name, above a misspelling. */
  hostInflected: 0.98,
  /** Taken off for each slip in a misspelled host name. 0.05 to 0.2. */
  hostSlip: 0.1,
  /** Host that only says where or near what ("next to the maple"). 0.3 to 0.6: still an offer, never the first. */
  hostNearby: 0.45,
  /** Host that only describes a thing ("tomato stakes", "rose bed", "apple juice"). */
  hostThing: 0.35,
  /** The unknown plant's names ("bush", "tree") fit nearly every question, so they count little. */
  hostUnknown: 0.3,
  /** Added for each further time the host is named, up to three: the plant of the story is named again. */
  hostAgain: 0.03,
  /** Hosts below this are not offered. */
  hostLeast: 0.25,

  /** A plant that no host stands for ("courgette"): it is the unknown plant, a little less surely than a host's own name. */
  hostOtherPlant: 0.9,
  /** A host that is also a place ("on the lawn"), where another plant is named. 0.5 to 0.8. */
  hostGround: 0.7,
  /** The only plant named, though it only says where: there is no other to ask about. Above `hostNamed`. */
  hostAlone: 0.65,
  /** A plant that something else is "strangling" or "climbing". */
  hostTroubled: 0.8,

  /** From this score on a host counts as named, and entries of other hosts step back. Above `hostNearby`. */
  hostNamed: 0.6,
  /** What is left of the unknown plant's entries when a host is named. */
  entryUnknownBesides: 0.3,
  /** What is left of an entry's fit when the question is surely about something else (soil, an insect, a plant). 0.2 to 0.6. */
  subjectLeast: 0.4,
  /** What is left of a garden job's score beside a better one. 0.3 to 0.8. */
  jobBesideJob: 0.5,
  /** A garden job is heard without a word of asking where it fits at least so well. 0.6 to 0.9. */
  jobUnasked: 0.7,
  /** What is left of the fit of a garden job when signs of trouble are told beside the asking. 0.5 to 0.9. */
  jobBesideTrouble: 0.6,
  /** A job that a whole letter asks for is offered from this share on. 0.2 to 0.5. */
  jobToldLeast: 0.25,
  /** So many of the likeliest are looked at. */
  jobsLookedAt: 8,
  /** So many of them are kept when the phrases that the words fit are weighed too. */
  jobsTold: 3,
  /** How much a phrase that fits wholly speaks for its job among those that a letter may ask for, in natural log odds. */
  jobToldByFit: 4,
  /** A job at even odds counts like a complaint that fits so well, and with other odds by this power of them. 0.2 to 0.4; 0.25 to 0.5. */
  jobToldBase: 0.27,
  jobToldLead: 0.4,
  /** Two jobs are offered among three from this share on. */
  jobToldPlainly: 0.6,
  /** A job comes before the best complaint from this share on. 0.7 to 0.9: trouble that is taken for a job costs more than a job that comes second. */
  jobToldFirst: 0.85,
  /** The same before a complaint that fits less well than this. */
  jobToldBeforeWeak: 0.65,
  complaintWeak: 0.3,
  /**
   * What a job's odds alone count beside its complaints, and what the texts of the jobs count when they foretell the letter
   * better than those of the complaints: logistic regression on 6,610 letters and tuning questions, each left out of what its
   * odds were fitted to, of which the area under the curve rose from 0.950 to 0.957.
   */
  jobToldAlone: 0.73,
  jobByTexts: 0.8,
  jobBesideComplaints: 0.19,
  /** From this share on it is no insect's or animal's question. */
  jobToldSurely: 0.85,
  /** What is left of a second job that a letter may ask for. 0.6 to 1. */
  jobBesideTold: 0.9,
  /** A subject comes before a plant that is named when it is at least this likely. 0.5 to 0.8. */
  subjectDespitePlant: 0.62,
  /** A subject that is not named comes before the plant of a job that is asked for when it is at least this likely. */
  subjectDespiteJob: 0.8,
  /** What the tree for poisons keeps beside a named plant's own sheet on poison. 0.5 to 0.9. */
  poisonsBesideSheet: 0.7,
  /** A subject is offered where it is at least this likely. */
  subjectOffered: 0.1,
  /** What is left of a real host's entry when no host is named: the unknown plant's equal entry comes first. */
  entryUnnamedHost: 0.95,
  /** The same when the asker says only "plant", "bush" or "tree". 0.8 to 0.95. */
  entryOnlyUnknown: 0.85,
  /** The same when the asker names a plant that no host stands for. */
  entryOtherPlant: 0.5,
  /** Share of a named host's rank that its best complaint gives: two plants named, one of them ill. 0.1 to 0.4. */
  hostByComplaint: 0.35,
  /** A host nobody named is offered when its entry has at least this score, and this much more than the next host's. */
  hostUnsaid: 0.6,
  hostUnsaidMargin: 0.15,
  /** The same for the lawn and the weeds, which are told of more often than named. */
  hostToldOf: 0.42,
  hostToldOfMargin: 0.06,
  /** The score of a host that only the complaint speaks for, as a share of its entry's. */
  hostByEntry: 0.8,

  /** A phrase that names nothing but the plant or small words ("something is wrong with the grass"). */
  phraseGeneral: 0.7,
  /** Share of a phrase's fit that holds when it covers little of what was asked. The rest grows with coverage. */
  phraseAlone: 0.5,
  /** A question's words beyond this many average ones do not make coverage harder: long stories wander. 3 to 8. */
  wordsToCover: 4,
  /** The parts of an entry's fit: its best phrase, all its phrases together, and what the signs and names of its problems say. */
  byPhrase: 0.65,
  byNode: 0.2,
  bySigns: 0.15,
  /** Telling of signs at which a problem is as well borne out as words can. */
  signsToConvince: 8,
  /** From this strength on a problem counts as named: one word that no other problem has ("clubroot") is enough in a guide of 900 problems. 5.5 to 8. */
  namedPlainly: 5.5,
  /** Strength of a problem's name and cause, of the sentence that describes it, and of what its profile says is always seen. */
  problemName: 1,
  problemWhat: 0.3,
  problemSign: 0.6,
  /** Signs seen in fewer of a problem's cases say nothing here. */
  signLeastShare: 0.4,
  /** Taken off the entry at the top of a tree, less the narrower the entry. */
  wideNode: 0.05,
  /** Lost by a phrase whose words stand far apart in the question. 0.1 to 0.3. */
  scattered: 0.2,
  /** A complaint word known only by respelling counts this much. */
  respelledWord: 0.75,
  /** Another word of the same group of alike words. 0.6 to 0.9. */
  alikeWord: 0.8,
  /** A word that is denied in the question or in the phrase, but not in both. */
  denied: 0.3,
  /** "Tomatoes" also means the fruit, but less. */
  nameAsPart: 0.5,
  /** How much a worked case in the very same words adds to the entries that lead to its end, as a share of them; one in like words adds less. 1 to 5. */
  likeCase: 4,
  /** How far worked cases are passed over where an entry phrase fits fully: then the words need no more meaning. 0 to 1. */
  likeCaseUnneeded: 1,
  /** How much a problem whose text foretells the words speaks for the entries that lead to it, in natural log odds. 0.4 to 1. */
  byTexts: 0.7,
  /** How far the texts are passed over where an entry phrase fits fully: then the words need no more meaning. 0 to 1. */
  textsUnneeded: 1,
  /** Share of a problem's text that is its own; the rest is what all texts are made of. 0.2 to 0.6. */
  textsOwn: 0.3,
  /** Places kept for a word said again and again, and entries looked at closely; both keep a rant cheap. */
  mostUses: 8,
  entriesWeighed: 24,
  /** Entries of the unknown plant that are weighed however many trees have the same words: it is the one to ask where no plant is named. 1 to 5. */
  unknownEntries: 3,
  /** A word in more phrases than this, of the plants looked at, opens no new ones, and entries beyond these many are not weighed: bounds for guides of thousands of trees. */
  mostOpened: 6000,
  nodesWeighed: 200,
  /** A question that is less likely than this to be for a plant helpline is out of scope. 0.2 to 0.5: rather hear an errand than refuse a plant. */
  scopeLeast: 0.3,
  /**
   * A letter that is at least so likely to tell of a danger raises a red flag though no rule heard one. Of calm letters kept
   * out of the fitting, about one in thirty does (`tests/bench/fit-dangers.ts`).
   */
  dangerTold: 0.72,
  /** The same for what is only asked about: a card too many is tiresome there, and one too few does no harm. */
  cautionTold: 0.94,
  /**
   * What a rule heard is taken back where the letter is less likely than this to tell of any danger, unless it asks to stop.
   * Of 2,963 letters of danger that a rule heard, each kept out of the fit, 2 are below, and of 787 calm ones 118; of real
   * letters that had no part in it none of 23 of danger and 8 of 24 calm ones (`tests/match/questions/README.md`).
   */
  dangerKept: { emergency: 0.2, caution: 0 },
  /** A kind of danger is raised beside the likeliest, or beside what a rule heard, from this share of all kinds on. 0.25 to 0.4. */
  dangerToldBeside: 0.3,
  /**
   * One that a rule heard beside others keeps its place from this share on. Of 247 that must be raised none has less, and of
   * 303 that must not every fourth has less than a fiftieth; but 219 of the 247 stand in letters that the weights were fitted to, and
   * only 15 in real questions kept out; at 0.02 "I gave him my weedkiller to drink" lost the card of swallowing to the one of sprays.
   * 0.01 to 0.1: a card too many is better than one too few.
   */
  dangerKeptBeside: 0.015,
  /** What a red flag needs beside which nothing else is shown: likelihood of a danger at all, and share of all kinds. */
  dangerToldAlone: 0.9,
  dangerKindAlone: 0.5,
  /** How strongly a plant that is less likely the one in question is drawn back beside the likeliest: a power of the share. 0.2 to 0.5. */
  plantInQuestion: 0.25,
  /** Entries below this are noise. */
  entryLeast: 0.1,
  /** Longest lists given back. */
  mostHosts: 6,
  mostEntries: 12,
} as const

/**
 * Slips allowed between a written word and a known one of `letters` letters: none below five, one below eight, then two.
 * Short plant names differ by one letter from too many other words (pea, pear, pest).
 */
export function slipsAllowed(letters: number): number {
  if (letters < 5) return 0
  return letters < 8 ? 1 : 2
}

/** Brings a score to 0..1 and two decimals more than anyone reads, so that equal matches compare equal. */
export function tidyScore(score: number): number {
  return Math.round(Math.min(1, Math.max(0, score)) * 10_000) / 10_000
}
