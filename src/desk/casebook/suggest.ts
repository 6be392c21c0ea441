import type { TreeSuggestion } from '../../../shared/index.js'
import { treeReach } from '../../engine/index.js'
import type { Guide, Host, Problem } from '../../guide/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { readCaseFile } from '../cases/read-case-file.js'
import { hostNamed, problemNamed } from '../guide-names.js'
import { checkCard } from '../views/cards.js'

/** A check decides when one answer to it is expected to say at least this much, in bits: a likelihood ratio of 2. */
const DECIDES_FROM_BITS = 1

/** Longest phrase suggested for an entry, in characters. */
const LONGEST_PHRASE = 90

/**
 * What a settled case says against the tree of its host: that its words lead to no entry of the true problem, and which
 * check not asked would have told the truth from what led. Nothing when the guide came to the truth by itself.
 * @param words the asker's words without personal data
 */
export function treeSuggestionsFor(guide: Guide, file: CaseFile, truth: string, words: string): TreeSuggestion[] {
  const problem = problemNamed(guide, truth)
  const reading = readCaseFile(guide, file)
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  if (problem === null || host === null || !host.problems.includes(problem.number)) return []
  const about = { host: host.id, hostName: host.name, problem: problem.id, problemName: problem.name }
  const found: TreeSuggestion[] = []

  const row = host.problems.indexOf(problem.number)
  const reach = treeReach(host).rows
  const reaches = (name: string): boolean => reach[host.nodes.findIndex((node) => node.name === name)]?.has(row) ?? false
  const place = file.matched.entries.findIndex((entry) => entry.host === host.id && reaches(entry.node))
  if (place !== 0) {
    const phrase = firstPhrase(words)
    found.push({
      ...about, kind: 'entry phrase', phrase, check: null, gainBits: null,
      text: place === -1 ? `The words “${phrase}” lead to no entry of the tree that reaches ${problem.name}.`
        : `The words “${phrase}” lead elsewhere first; the entry that reaches ${problem.name} came in place ${place + 1}.`,
    })
  }

  const concluded = reading.step.kind === 'conclude' && reading.step.problem === truth
  const leader = reading.differential.find((one) => one.problem !== null && one.problem !== truth)?.problem ?? null
  const rival = leader === null ? null : problemNamed(guide, leader)
  const deciding = concluded || rival === null ? null : decidingCheck(guide, host, file, problem, rival)
  if (deciding !== null && rival !== null) {
    found.push({
      ...about, kind: 'deciding check', phrase: null, check: deciding.card, gainBits: deciding.bits,
      text: `“${deciding.card.ask}” was not answered, and would have told ${problem.name} from ${rival.name}.`,
    })
  }
  return found
}

/**
 * The check not yet answered whose answer, were the truth true, is expected to say most for it against its rival: the
 * Kullback–Leibler divergence Σ P(a | truth) log2 (P(a | truth) / P(a | rival)), in bits. Looks that need a laboratory
 * or a wait do not count: the tree cannot ask them.
 */
function decidingCheck(guide: Guide, host: Host, file: CaseFile, truth: Problem, rival: Problem) {
  const row = host.problems.indexOf(truth.number)
  const against = host.problems.indexOf(rival.number)
  if (row === -1 || against === -1) return null
  const answered = new Set(file.evidence.findings.map(({ check }) => check))
  const ranked = [...host.checks].flatMap((number, place) => {
    const check = guide.checks[number]
    const log = host.logLikelihood[place]
    if (check === undefined || log === undefined || answered.has(check.id)) return []
    if (check.effort === 'send a sample' || check.effort === 'wait a day') return []
    const answers = check.answers.length
    let bits = 0
    for (let answer = 0; answer < answers; answer++) {
      const here = log[row * answers + answer] ?? 0
      bits += Math.exp(here) * (here - (log[against * answers + answer] ?? 0)) / Math.LN2
    }
    return [{ card: checkCard(check), bits }]
  })
  const best = ranked.sort((a, b) => b.bits - a.bits)[0]
  return best === undefined || best.bits < DECIDES_FROM_BITS ? null : best
}

/** The first sentence, shortened at a word. */
function firstPhrase(words: string): string {
  const [sentence = words] = words.trim().split(/(?<=[.!?])\s|\n/, 1)
  const bare = sentence.replace(/[.!?\s]+$/, '')
  return bare.length <= LONGEST_PHRASE ? bare : `${bare.slice(0, LONGEST_PHRASE).replace(/\s+\S*$/, '')} …`
}
