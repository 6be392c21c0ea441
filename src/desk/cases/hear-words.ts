import { findingsFor, type HeardFinding, type Matched, matchQuestion } from '../../match/index.js'
import type { Knowledge } from '../room.js'
import type { KeptFinding, KeptMatch } from './case-file.js'

/** What was heard in everything an asker has written. */
export interface Heard {
  readonly redFlags: readonly string[]
  readonly matched: KeptMatch
  /** Answers that the words already give. */
  readonly findings: readonly KeptFinding[]
}

/**
 * Listens to all the words of a case: together, because a plant may be named in one message and the complaint in
 * the next; and the newest alone, so that nothing said earlier can cancel or crowd out a red flag in it. Offsets in the
 * result count from the start of all messages joined by a line end.
 */
export function hearWords({ index }: Knowledge, words: readonly string[]): Heard {
  const together = matchQuestion(index, words.join('\n'))
  const newest = words.length > 1 ? matchQuestion(index, words[words.length - 1] ?? '') : together
  return { redFlags: [...new Set([...flagsIn(together), ...flagsIn(newest)])], matched: keep(together), findings: together.findings.map(kept) }
}

/** The answers that all the words of a case already give to the checks of one host. */
export function hearAnswers({ index }: Knowledge, words: readonly string[], host: string): readonly KeptFinding[] {
  return findingsFor(index, words.join('\n'), host).map(kept)
}

/**
 * The findings of a case with what was said taken in anew. What was answered when asked, noted or seen in a photo stays
 * as it is; what was heard before gives way to what is heard now.
 */
export function withSaid(findings: readonly KeptFinding[], said: readonly KeptFinding[]): KeptFinding[] {
  const given = findings.filter(({ from }) => from !== 'said')
  return [...given, ...said.filter(({ check }) => !given.some((one) => one.check === check))]
}

/** The red flags heard in a single text, such as a volunteer's note. */
export function hearRedFlags({ index }: Knowledge, text: string): readonly string[] {
  return flagsIn(matchQuestion(index, text))
}

function kept({ check, answer }: HeardFinding): KeptFinding {
  return { check, answer, from: 'said' }
}

function flagsIn(matched: Matched): string[] {
  return matched.redFlags.map(({ redFlag }) => redFlag)
}

function keep(matched: Matched): KeptMatch {
  return {
    hosts: matched.hosts.map(({ host, score, words }) => ({ host, score, words: [...words] })),
    // Which problems each leads to the guide knows: to keep them, hundreds for an unknown plant, made a case ten times as large.
    entries: matched.entries.map(({ host, node, score, phrase, words }) => ({ host, node, score, phrase, words: [...words] })),
    confidence: matched.confidence, outOfScope: matched.outOfScope,
  }
}
