import type { CheckId, HostId, NodeName, ProblemId, RedFlag, RedFlagId } from '../guide/index.js'

/** Words of the question (as the asker wrote them) that led to a candidate, with where they stand. */
export interface HeardWords {
  readonly text: string
  /** Offset of the first character in the question, in UTF-16 units. */
  readonly at: number
}

export interface HeardRedFlag {
  readonly redFlag: RedFlagId
  /** An emergency has happened or is about to; a caution is only asked about. */
  readonly level: RedFlag['level']
  readonly words: readonly HeardWords[]
}

export interface HostCandidate {
  readonly host: HostId
  /** 0 to 1; 1 is an exact name. */
  readonly score: number
  readonly words: readonly HeardWords[]
}

export interface EntryCandidate {
  readonly host: HostId
  readonly node: NodeName
  /** 0 to 1; comparable between candidates of one question. */
  readonly score: number
  /** The entry phrase that fitted best, or the name of the garden job that the whole letter asks for. */
  readonly phrase: string
  readonly words: readonly HeardWords[]
  /** Problems that this entry can lead to. */
  readonly problems: readonly ProblemId[]
}

/** An answer that the words already give. */
export interface HeardFinding {
  readonly check: CheckId
  /** One of the check's answer labels. */
  readonly answer: string
  readonly words: readonly HeardWords[]
}

/** What was heard in one free-text question. Lists are best first. */
export interface Matched {
  readonly redFlags: readonly HeardRedFlag[]
  readonly hosts: readonly HostCandidate[]
  readonly entries: readonly EntryCandidate[]
  /** Answers already given in the words, for checks of the first host; in order of check. */
  readonly findings: readonly HeardFinding[]
  /** 0 to 1: how often the first entry is right where the words were as plain as these; 0 without an entry. */
  readonly confidence: number
  /** True where nothing was heard that a plant helpline could answer. */
  readonly outOfScope: boolean
}
