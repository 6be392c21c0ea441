/** The guide's files after shaping: typed values, every name with the place where it was written, nothing linked yet. */
import type { FrequencyWord } from './frequency-words.js'
import type { Cost, Effort, FavourableWeather, HeatWindow, HowCommon, ProblemKind, Source } from './guide.js'
import type { Located, Place } from './source-file.js'

/** Words with which a node handles every answer that it does not name. */
export const OTHER_ANSWERS = 'other answers'

export interface Acceptance { readonly warning: Located<string>; readonly because: string }

export interface Draft {
  readonly id: Located<string>
  readonly accepts: readonly Acceptance[]
}

export interface AnswerDraft {
  readonly label: Located<string>
  readonly saidAs: readonly Located<string>[]
  readonly redFlag: Located<string> | null
}

export interface CheckDraft extends Draft {
  readonly kind: 'check'
  readonly ask: Located<string>
  readonly how: Located<string>
  readonly why: Located<string>
  readonly effort: Effort
  readonly chief: boolean
  readonly answers: readonly AnswerDraft[]
}

export interface SignDraft {
  readonly check: Located<string>
  readonly answers: readonly { readonly label: Located<string>; readonly word: FrequencyWord }[]
}

export interface ProblemDraft extends Draft {
  readonly kind: 'problem'
  readonly name: Located<string>
  readonly what: Located<string>
  readonly agent: string | null
  readonly nature: ProblemKind
  readonly hosts: readonly { readonly host: Located<string>; readonly how: HowCommon }[]
  readonly months: readonly number[]
  readonly favouredBy: readonly FavourableWeather[]
  readonly heatWindow: HeatWindow | null
  readonly cost: Cost
  readonly shows: readonly SignDraft[]
  /** Groups of checks that see the same sign. */
  readonly sameSign: readonly (readonly Located<string>[])[]
  readonly lookAlikes: readonly Located<string>[]
  readonly advice: {
    readonly bottomLine: Located<string>
    readonly doNow: readonly Located<string>[]
    readonly notWorthDoing: readonly Located<string>[]
    readonly nextYear: readonly Located<string>[]
    readonly spray: Located<string>
  }
  readonly cautions: readonly Located<string>[]
  readonly watch: { readonly at: Place; readonly escalate: Located<string> | null } | null
  readonly sources: readonly Source[]
  readonly reviewedOn: Located<string>
}

export type TargetDraft = { readonly at: Place } & (
  | { readonly kind: 'node'; readonly node: string }
  | { readonly kind: 'problem'; readonly problem: Located<string> }
  | { readonly kind: 'hand over'; readonly because: string }
  | { readonly kind: 'host'; readonly host: Located<string>; readonly node: Located<string> | null }
  | { readonly kind: 'nowhere' }
)

export interface NodeDraft {
  readonly name: Located<string>
  readonly entry: readonly Located<string>[]
  readonly check: Located<string>
  readonly answers: readonly { readonly label: Located<string>; readonly target: TargetDraft }[]
  readonly otherAnswers: TargetDraft | null
  readonly notSure: TargetDraft | null
}

export interface HostDraft extends Draft {
  readonly kind: 'host'
  readonly name: string
  readonly called: readonly Located<string>[]
  readonly start: Located<string>
  readonly nodes: readonly NodeDraft[]
}

export interface HearingDraft {
  readonly allOf: readonly (readonly string[])[]
  readonly within: number
  readonly inOrder: boolean
  readonly reach: number
  readonly unless: readonly (readonly string[])[]
  readonly phrases: readonly string[]
}

export interface RedFlagDraft extends Draft {
  readonly kind: 'red flag'
  readonly title: Located<string>
  readonly level: 'emergency' | 'caution'
  /** Word sets named in any group, where they are named. */
  readonly setsUsed: readonly Located<string>[]
  /** Every group word, as written. */
  readonly groupWords: readonly Located<string>[]
  readonly hear: readonly HearingDraft[]
  readonly doNow: readonly Located<string>[]
  readonly doNot: readonly Located<string>[]
  readonly call: readonly Located<string>[]
  readonly then: 'carry on' | 'stop'
  readonly afterwards: { readonly host: Located<string>; readonly node: Located<string>; readonly offer: Located<string> } | null
  readonly looking: Located<string> | null
}

export interface RegionDraft {
  readonly kind: 'region'
  readonly at: Place
  readonly id: string
  readonly name: string
  readonly helpline: string
  readonly demonstration: boolean
  readonly units: 'metric' | 'us'
  readonly language: string
  readonly districts: ReadonlyMap<string, string>
  /** Districts that lie beside one, as written; it holds both ways. */
  readonly beside: readonly { readonly district: Located<string>; readonly others: readonly Located<string>[] }[]
  readonly numbers: ReadonlyMap<string, { readonly name: string; readonly number: string }>
  /** The smallest count by district that anyone may see. */
  readonly leastPublicCount: number
  readonly onDutyMail: string | null
  readonly targets: { readonly answerWithinHours: number; readonly urgentWithinHours: number; readonly eraseContactAfterDays: number }
}

export interface LayWordsDraft {
  readonly kind: 'lay words'
  readonly at: Place
  readonly alike: readonly (readonly Located<string>[])[]
  readonly otherPlants: readonly Located<string>[]
  readonly things: readonly Located<string>[]
  readonly grounds: readonly Located<string>[]
  readonly errands: readonly Located<string>[]
  readonly kinds: ReadonlyMap<string, readonly Located<string>[]>
}

/** Named lists of words that red flags share. */
export interface WordSetsDraft {
  readonly kind: 'word sets'
  readonly at: Place
  readonly sets: ReadonlyMap<string, readonly string[]>
  /** The sets that other sets name. */
  readonly setsUsed: readonly Located<string>[]
  /** Every word of every set, as written. */
  readonly groupWords: readonly Located<string>[]
}

export interface WorkedCaseDraft {
  readonly id: Located<string>
  readonly words: string
  readonly on: string
  readonly district: Located<string> | null
  readonly host: Located<string> | null
  readonly findings: readonly { readonly check: Located<string>; readonly answer: Located<string> }[]
  readonly ends:
    | { readonly kind: 'problem'; readonly problem: Located<string> }
    | { readonly kind: 'hand over' }
    | { readonly kind: 'red flag'; readonly redFlag: Located<string> }
  readonly alsoRight: readonly Located<string>[]
}

export interface CasebookDraft {
  readonly kind: 'casebook'
  readonly cases: readonly WorkedCaseDraft[]
}
