/**
 * The compiled guide: one immutable value that holds all the knowledge.
 * Inside, checks, problems, hosts and answers are numbers (their place in the lists here) and the
 * likelihoods are typed arrays; names are kept for the outside.
 */

declare const brand: unique symbol
type Branded<Name extends string> = string & { readonly [brand]: Name }

export type CheckId = Branded<'check'>
export type ProblemId = Branded<'problem'>
export type HostId = Branded<'host'>
export type NodeName = Branded<'node'>
export type RedFlagId = Branded<'red flag'>

export const NOT_SURE = 'not sure'
export const CANT_LOOK = "can't look now"

export type Effort = 'glance' | 'hand lens' | 'dig' | 'wait a day' | 'send a sample'
export type Cost = 'ordinary' | 'costly' | 'regulated' | 'dangerous'
export type HowCommon = 'very common' | 'common' | 'occasional' | 'rare'
export type ProblemKind = (typeof problemKinds)[number]
export const problemKinds = [
  'fungus', 'water mould', 'bacterium', 'virus', 'phytoplasma', 'insect', 'mite', 'nematode', 'mollusc',
  'mammal or bird', 'weed', 'disorder', 'weather', 'nutrition', 'chemical injury', 'parasitic plant', 'garden job', 'harmless',
] as const

export interface Answer {
  /** The answer's name in every file, case and message; in the region's language also the words shown. */
  readonly label: string
  /** The words shown, in the language of the guide. */
  readonly shown: string
  /** Words in a question that already say this answer. */
  readonly saidAs: readonly string[]
  /** Number of the red flag this answer raises, or null. */
  readonly redFlag: number | null
}

export interface Check {
  readonly id: CheckId
  readonly number: number
  readonly ask: string
  readonly how: string
  readonly why: string
  readonly effort: Effort
  /** Several answers may be true at once, and it asks for the chief one. */
  readonly chief: boolean
  readonly answers: readonly Answer[]
}

export interface Advice {
  readonly bottomLine: string
  readonly doNow: readonly string[]
  readonly notWorthDoing: readonly string[]
  readonly nextYear: readonly string[]
  /** 'none', or a paragraph that defers to the label and local rules. */
  readonly spray: string
}

export interface Source {
  readonly title: string
  readonly by: string
  readonly year: number | null
}

/** What one problem shows at one check. */
export interface Sign {
  readonly check: number
  /** Frequency word per answer number; null where the profile does not mention that answer. */
  readonly words: readonly (string | null)[]
  /** P(answer | problem) per answer number, summing to 1. */
  readonly shares: Float64Array
}

/** Kinds of weather that can make a problem likelier; what each means in numbers stands in the season. */
export const favourableWeathers = ['late-blight weather', 'tomato leaf-blight weather', 'apple-scab weather', 'wet leaves', 'drought', 'soaking rain'] as const
export type FavourableWeather = (typeof favourableWeathers)[number]

/** Ways to reckon the degree days of a day from its lowest and highest temperature. */
export const degreeDayMethods = ['average', 'modified average', 'single sine', 'single triangle'] as const
export type DegreeDayMethod = (typeof degreeDayMethods)[number]

/** When in the year's warmth a problem is seen, as it was published. */
export interface HeatWindow {
  /** Unit of all temperatures and degree days here. */
  readonly unit: 'C' | 'F'
  /** Degree days from which it is seen. */
  readonly least: number
  /** Degree days after which it is over; null when it stays. */
  readonly most: number | null
  readonly base: number
  /** Upper threshold, or null. */
  readonly upper: number | null
  /** The day of the year from which degree days are summed. */
  readonly from: { readonly month: number; readonly day: number }
  readonly method: DegreeDayMethod
}

export interface Problem {
  readonly id: ProblemId
  readonly number: number
  readonly name: string
  readonly what: string
  readonly agent: string | null
  readonly kind: ProblemKind
  readonly cost: Cost
  /** Months 1 to 12 in which it is usually seen; empty means any time. */
  readonly months: readonly number[]
  readonly favouredBy: readonly FavourableWeather[]
  /** Null where no window is published. */
  readonly heatWindow: HeatWindow | null
  readonly signs: readonly Sign[]
  /** Groups of checks (by number) that see the same sign of this problem, and so must not count twice. */
  readonly sameSign: readonly (readonly number[])[]
  readonly lookAlikes: readonly number[]
  readonly advice: Advice
  readonly cautions: readonly string[]
  /** What to tell the asker and the office when this problem is in question; null when it is not a watch problem. */
  readonly watch: { readonly escalate: string } | null
  /** Empty means common practice, with no single source. */
  readonly sources: readonly Source[]
  /** ISO date of the last review by a specialist. */
  readonly reviewedOn: string
}

export type Target =
  | { readonly kind: 'node'; readonly node: number }
  | { readonly kind: 'problem'; readonly problem: number }
  | { readonly kind: 'hand over'; readonly because: string }
  | { readonly kind: 'host'; readonly host: number; readonly node: number }

export interface TreeNode {
  readonly name: NodeName
  readonly number: number
  /** Phrases people say when their complaint starts here; empty when the node is not an entry. */
  readonly entry: readonly string[]
  readonly check: number
  /** Where each answer leads, by answer number. */
  readonly answers: readonly Target[]
  /** Where *not sure* leads; null lets the engine pick the most telling check. */
  readonly notSure: Target | null
}

export interface Host {
  readonly id: HostId
  readonly number: number
  readonly name: string
  readonly called: readonly string[]
  readonly start: number
  readonly nodes: readonly TreeNode[]
  /** Numbers of the problems this host can have. */
  readonly problems: Int32Array
  /** How common each problem is among the host's complaints, in the order of `problems`; sums to 1. */
  readonly commonness: Float64Array
  /** Numbers of the checks its tree asks, or that the profiles of problems found on this host alone mention. */
  readonly checks: Int32Array
  /**
   * For each check of `checks`, ln P(answer | problem), row by row: one row a problem in the order of `problems`,
   * then one last row for *something not listed here*; a column an answer.
   */
  readonly logLikelihood: readonly Float64Array[]
  /** For each check of `checks`, the number of the group of checks that see the same sign, or -1. */
  readonly signGroups: Int32Array
  /**
   * Whether it stands for any plant at all: its tree leads on to other hosts' trees more often than to problems of its
   * own. So much is not listed there that nothing is concluded before its tree's end.
   */
  readonly isOfAnyPlant: boolean
}

export type CallName = string

export interface RedFlagHearing {
  /** Word groups that must all be heard within `within` words of each other; null when `phrases` is used. */
  readonly allOf: readonly (readonly string[])[]
  readonly within: number
  /** True where the groups count only in the order in which they are written. */
  readonly inOrder: boolean
  readonly unless: readonly (readonly string[])[]
  /** How many words before or after what is heard an `unless` word still cancels it. */
  readonly reach: number
  /** Whole phrases, any one of which is enough. */
  readonly phrases: readonly string[]
}

export interface RedFlag {
  readonly id: RedFlagId
  readonly number: number
  readonly title: string
  readonly level: 'emergency' | 'caution'
  readonly hear: readonly RedFlagHearing[]
  readonly card: {
    readonly doNow: readonly string[]
    readonly doNot: readonly string[]
    /** Names of numbers in the region's settings. */
    readonly call: readonly CallName[]
  }
  readonly then: 'carry on' | 'stop'
  /** What is offered once the asker goes on, besides the complaints they told of: a place in a tree about what did the harm. */
  readonly afterwards: { readonly host: HostId; readonly node: NodeName; readonly offer: string } | null
  /** How to look without coming to harm, said beside every check once the asker goes on; null where nothing needs saying. */
  readonly looking: string | null
}

export interface Region {
  readonly id: string
  readonly name: string
  readonly helpline: string
  readonly demonstration: boolean
  readonly units: 'metric' | 'us'
  readonly language: string
  /** District id to name. */
  readonly districts: ReadonlyMap<string, string>
  /** The districts beside each one, in order of name; one that no line names has none. */
  readonly beside: ReadonlyMap<string, readonly string[]>
  readonly numbers: ReadonlyMap<CallName, { readonly name: string; readonly number: string }>
  /** The smallest count by district that anyone may see; smaller ones are left out of what is public. */
  readonly leastPublicCount: number
  /** The mail address that hears of urgent tickets, or null. */
  readonly onDutyMail: string | null
  readonly targets: {
    readonly answerWithinHours: number
    readonly urgentWithinHours: number
    readonly eraseContactAfterDays: number
  }
}

/** What ordinary words mean to the hearing of questions; the same for every host. */
export interface LayWords {
  /** Groups of words and short phrases that askers use for much the same thing. */
  readonly alike: readonly (readonly string[])[]
  /** Plants that people name and no host stands for. */
  readonly otherPlants: readonly string[]
  /** Words that turn a plant's name before them into a thing: "tomato stakes". */
  readonly things: readonly string[]
  /** Names of hosts that are also places where other plants stand: "the maple on the lawn". */
  readonly grounds: readonly string[]
  /** What people ask that is no plant question: opening hours, prices, machines. */
  readonly errands: readonly string[]
  /** Kinds of words that tell what a question is about (insects, soil, weather), by name. Written like the group words of a red flag. */
  readonly kinds: ReadonlyMap<string, readonly string[]>
}

export type CaseEnd =
  | { readonly kind: 'problem'; readonly problem: number }
  | { readonly kind: 'hand over' }
  | { readonly kind: 'red flag'; readonly redFlag: number }

/** One case of the casebook: what was said, what would be seen, and how it truly ended. */
export interface WorkedCase {
  readonly id: string
  readonly words: string
  /** ISO date. */
  readonly on: string
  readonly district: string | null
  /** Number of the host, or null when the words alone must do. */
  readonly host: number | null
  /** Check number to answer label, *not sure* or *can't look now*. */
  readonly findings: ReadonlyMap<number, string>
  readonly ends: CaseEnd
  readonly alsoRight: readonly number[]
}

/** What the guide says, and hears, in one more language. */
export interface Translation {
  /** BCP 47 tag, as in the names of its files. */
  readonly language: string
  /** Words by slot (translation/texts-of.ts); what is missing is not there. */
  readonly texts: ReadonlyMap<string, readonly string[]>
  /** What each red flag listens for in this language, by number; empty where nothing is written. */
  readonly hear: readonly (readonly RedFlagHearing[])[]
  readonly layWords: LayWords
  /** Numbers of the hosts whose translation claims to be complete. */
  readonly completeHosts: readonly number[]
}

export interface Guide {
  /** SHA-256 of the guide's meaning, in hex: the same knowledge gives the same hash, whatever the layout of the files. */
  readonly hash: string
  /** The language of its words: the region's own, or that of a view (`guideIn`). */
  readonly language: string
  /** In a view: the texts that are not translated and stand in the region's own language. */
  readonly untranslated: ReadonlySet<string>
  readonly translations: ReadonlyMap<string, Translation>
  readonly region: Region
  readonly checks: readonly Check[]
  readonly problems: readonly Problem[]
  readonly hosts: readonly Host[]
  readonly redFlags: readonly RedFlag[]
  /** The sets of words that the red flags share, by name, each with the words of the sets inside it. */
  readonly wordSets: ReadonlyMap<string, readonly string[]>
  readonly layWords: LayWords
  readonly casebook: readonly WorkedCase[]
  readonly checkNumbers: ReadonlyMap<string, number>
  readonly problemNumbers: ReadonlyMap<string, number>
  readonly hostNumbers: ReadonlyMap<string, number>
  readonly redFlagNumbers: ReadonlyMap<string, number>
}
