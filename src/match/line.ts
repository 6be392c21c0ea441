import type { HeardRedFlag } from './matched.js'
import { type MatchIndex, matchQuestion } from './match.js'

/** One line of `frondline match`: what was heard in one question, as plain JSON. Lists are best first. */
export interface MatchLine {
  readonly text: string
  /** Emergencies: stop, and show what to do now. */
  readonly redFlags: readonly string[]
  /** Asked or said in passing, and nothing has happened: a calm note beside the plant question. */
  readonly cautions: readonly string[]
  readonly hosts: readonly { readonly host: string; readonly score: number }[]
  readonly entries: readonly {
    readonly host: string
    readonly node: string
    readonly score: number
    readonly problems: readonly string[]
  }[]
  readonly findings: readonly { readonly check: string; readonly answer: string; readonly words: readonly string[] }[]
  /** 0 to 1: how often the first entry is right where the words were as plain as these. */
  readonly confidence: number
  /** True where nothing was heard that a plant helpline could answer. */
  readonly outOfScope: boolean
}

/**
 * Matches one question and keeps what a script wants to read.
 * The command line prints one such line for each line it is given: `JSON.stringify(matchLine(index, line))`.
 */
export function matchLine(index: MatchIndex, words: string): MatchLine {
  const { redFlags, hosts, entries, findings, confidence, outOfScope } = matchQuestion(index, words)
  return {
    text: words,
    redFlags: ids(redFlags.filter(({ level }) => level === 'emergency')),
    cautions: ids(redFlags.filter(({ level }) => level === 'caution')),
    hosts: hosts.map(({ host, score }) => ({ host, score })),
    entries: entries.map(({ host, node, score, problems }) => ({ host, node, score, problems })),
    findings: findings.map(({ check, answer, words: heard }) => ({ check, answer, words: heard.map(({ text }) => text) })),
    confidence, outOfScope,
  }
}

function ids(heard: readonly HeardRedFlag[]): readonly string[] {
  return heard.map(({ redFlag }) => redFlag)
}
