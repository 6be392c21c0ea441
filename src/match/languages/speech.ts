import type { DangerWeights, JobWeights } from '../letter-weights.js'
/** What the hearing knows of one language: the forms of its words, and the small words that steer what is meant. All words folded. */
export interface Speech {
  /** What letters of danger say in it; null where nobody has fitted it. */
  readonly dangerLetters: DangerWeights | null
  /** What letters that ask for a garden job say in it; null likewise. */
  readonly jobLetters: JobWeights | null
  /** Brings the forms of one word together; see `stems.ts` and `spanish-stems.ts`. */
  readonly stem: (word: string) => string
  /** The singular of a noun, for names, which must not lose more than their plural. */
  readonly singular: (word: string) => string
  /** Words that say nothing about a plant. */
  readonly stopWords: ReadonlySet<string>
  /** Words that are right as they stand, and no slips of a plant's name or a danger. */
  readonly everydayWords: ReadonlySet<string>
  /** Stop words of this language that another one, also heard, has as telling words: Spanish "tan" is no colour. */
  readonly silent: ReadonlySet<string>
  /** They deny what follows. */
  readonly negations: ReadonlySet<string>
  /** They deny what follows once "to" stands after them: "refuses to flower", "has yet to give a single bloom". */
  readonly deniesWithTo: ReadonlySet<string>
  /** Telling words that a negation reaches over: "cannot find any bugs", "no black spots". */
  readonly passesNegation: ReadonlySet<string>
  /** They end what a negation denies. */
  readonly endsNegation: ReadonlySet<string>
  readonly names: AroundNames
  readonly answers: AroundAnswers
}

/** Words around the name of a plant that tell whether it is the plant in question. */
export interface AroundNames {
  /** Passed over before a name: "my", "the". */
  readonly between: ReadonlySet<string>
  /** "Next to", "under": one to three words before the name. */
  readonly nearby: ReadonlySet<string>
  /** "Next to it", "in it": the two or three words after a name. */
  readonly alongside: ReadonlySet<string>
  /** "Apple jam" said with the thing first: two words before the name, as "mermelada de". */
  readonly thingsOf: ReadonlySet<string>
  /** "Are fine": being, how much, and well. */
  readonly being: ReadonlySet<string>
  readonly degrees: ReadonlySet<string>
  /** "Went beetroot", "nearly lemon": just before the name of a plant that is the name of a colour too, and those names. */
  readonly becoming: ReadonlySet<string>
  readonly colours: ReadonlySet<string>
  readonly fine: ReadonlySet<string>
  /** "On the lawn". */
  readonly inPlace: ReadonlySet<string>
}

/** Words in and around an answer already said that tell whether it is meant. */
export interface AroundAnswers {
  /** Need not be said though the saying has them. */
  readonly joining: ReadonlySet<string>
  /** May stand between the words of a saying. */
  readonly passedOver: ReadonlySet<string>
  readonly denying: ReadonlySet<string>
  /** Before an answer that is asked, feared or guessed, not told. */
  readonly asking: ReadonlySet<string>
  readonly colours: ReadonlySet<string>
  /** May follow a colour that is said of the thing before it. */
  readonly following: ReadonlySet<string>
  readonly clauseWords: ReadonlySet<string>
  readonly question: RegExp
  readonly somebodyElses: RegExp
  readonly anotherYear: RegExp
  /** Just before an answer that is over or was ruled out: "no longer", "ruled out". */
  readonly over: RegExp
  /** In the words after an answer, as far as the sentence goes and with its commas: ", maybe", "but that has gone now". */
  readonly takenBack: RegExp
  /** "Looks like" before it, and "but it isn't" after. */
  readonly likened: RegExp
  readonly unlikened: RegExp
  /** The sentence before an answer that asks about all of its kind: "do roses get". */
  readonly askedOfAll: RegExp
  /** In the clause before an answer of another plant than the asker's: "the one beside it". */
  readonly besides: RegExp
  /** Just after an answer that is not the start of the trouble: "two days before". */
  readonly beforeThat: ReadonlySet<string>
  /** Just after an answer that `once` stands before: "it was bone dry, then". */
  readonly noLonger: ReadonlySet<string>
  readonly once: RegExp
  /** A saying that is a time. */
  readonly times: RegExp
  /** What an asker does at a time that need not be when the trouble began. */
  readonly acts: ReadonlySet<string>
  readonly recovering: ReadonlySet<string>
  /** Names of parts, singular, to the part they mean. A word that may mean the whole plant ("rose", "grapes") is none. */
  readonly parts: ReadonlyMap<string, readonly string[]>
  /** A saying with this stem may be told of another year. */
  readonly ofAnotherYear: string
}

/** Words parted by blanks, as a set. */
export function listed(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/u))
}

/** Each name of a part to the first name in its line. */
export function partNames(lines: readonly string[]): ReadonlyMap<string, readonly string[]> {
  return new Map(lines.flatMap((line) => {
    const names = line.split(' ')
    return names.map((name): [string, readonly string[]] => [name, names.slice(0, 1)])
  }))
}

/** Both sets as one. */
export function both(one: ReadonlySet<string>, other: ReadonlySet<string>): ReadonlySet<string> {
  return new Set([...one, ...other])
}
