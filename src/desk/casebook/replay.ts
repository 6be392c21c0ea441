import { type Evidence, type Finding, readCase, withFinding } from '../../engine/index.js'
import { type Guide, type HostId, type NodeName, NOT_SURE, type RedFlagId, type WorkedCase } from '../../guide/index.js'
import { findingsFor, type Matched, type MatchIndex, matchQuestion } from '../../match/index.js'

/** How one worked case went when it was played through the engine. */
export interface Replayed {
  readonly case: string
  readonly asked: readonly { readonly check: string; readonly answer: string }[]
  /** A problem's id, 'hand over', or 'red flag' with the ids of the cards. */
  readonly concluded: string
  readonly expected: string
  readonly ok: boolean
  /** Probability of the concluded problem; null when none was concluded. */
  readonly probability: number | null
  /** Host and node where the case began; null where the words and the case gave no host. */
  readonly start: { readonly host: string; readonly node: string | null } | null
}

/** A case that takes more checks than this is a fault of the engine. */
const MOST_CHECKS = 30

/** An entry heard with less than this is not taken: the case begins at the top of the host's tree instead. */
const LEAST_ENTRY_SCORE = 0.35

/** The host whose tree takes questions without a plant, where the guide has it. */
const UNKNOWN_PLANT = 'unknown-plant'

/**
 * Plays one worked case as the desk would: the words through the matcher, with the answers that they already give, then
 * each check asked is answered from the case's findings, *not sure* where it has none.
 * Red flags of level caution do not end a case; emergencies do.
 * @param plausible what a season multiplies priors by; none when left out
 */
export function replayCase(guide: Guide, index: MatchIndex, worked: WorkedCase, plausible: Readonly<Record<string, number>> = {}): Replayed {
  const matched = matchQuestion(index, worked.words, worked.id)
  const start = startOf(guide, worked, matched)
  let findings: readonly Finding[] = start === null ? [] : findingsFor(index, worked.words, start.host).map(({ check, answer }) => ({ check, answer, from: 'said' }))
  const asked: { check: string; answer: string }[] = []
  const redFlags: RedFlagId[] = matched.redFlags.map(({ redFlag }) => redFlag)
  const done = (concluded: string, ok: boolean, probability: number | null): Replayed =>
    ({ case: worked.id, asked, concluded, expected: expectedEnd(guide, worked), ok, probability, start })
  while (asked.length < MOST_CHECKS) {
    const evidence: Evidence = { redFlags, carriedOn: false, start, findings }
    const { step, cards, differential } = readCase(guide, evidence, { on: worked.on, district: worked.district, plausible })
    const wanted = worked.ends.kind === 'red flag' ? guide.redFlags[worked.ends.redFlag]?.id : undefined
    if (wanted !== undefined && cards.includes(wanted)) return done(`red flag ${cards.join(', ')}`, true, null)
    switch (step.kind) {
      case 'red-flag': return done(`red flag ${cards.join(', ')}`, false, null)
      case 'place': return done('hand over', worked.ends.kind === 'hand over', null)
      case 'hand-over': return done('hand over', worked.ends.kind === 'hand over', null)
      case 'conclude': {
        const number = guide.problemNumbers.get(step.problem) ?? -1
        const ok = (worked.ends.kind === 'problem' && worked.ends.problem === number) || worked.alsoRight.includes(number)
        return done(step.problem, ok, differential.find(({ problem }) => problem === step.problem)?.probability ?? null)
      }
      case 'ask': {
        const answer = worked.findings.get(guide.checkNumbers.get(step.check) ?? -1) ?? NOT_SURE
        findings = withFinding(findings, { check: step.check, answer, from: 'asked' })
        asked.push({ check: step.check, answer })
      }
    }
  }
  throw new Error(`The case ${worked.id} did not end within ${MOST_CHECKS} checks. The engine must end every case.`)
}

function startOf(guide: Guide, worked: WorkedCase, matched: Matched): { host: HostId; node: NodeName | null } | null {
  const said = worked.host === null ? undefined : guide.hosts[worked.host]?.id
  // "A tree" or "some plant" names no plant: then the complaint that is offered first tells which plant is meant.
  const named = matched.hosts[0]?.host === UNKNOWN_PLANT ? undefined : matched.hosts[0]?.host
  const entry = matched.entries.find(({ host }) => host === (said ?? named ?? host))
  if (entry !== undefined && entry.score >= LEAST_ENTRY_SCORE) return { host: entry.host, node: entry.node }
  const host = said ?? matched.hosts[0]?.host ?? guide.hosts[guide.hostNumbers.get(UNKNOWN_PLANT) ?? -1]?.id
  return host === undefined ? null : { host, node: null }
}

function expectedEnd(guide: Guide, { ends }: WorkedCase): string {
  switch (ends.kind) {
    case 'problem': return guide.problems[ends.problem]?.id ?? '?'
    case 'red flag': return `red flag ${guide.redFlags[ends.redFlag]?.id ?? '?'}`
    case 'hand over': return 'hand over'
  }
}
