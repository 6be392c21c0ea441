import type { ProblemDraft } from '../drafts.js'
import { sharesFromWords } from '../frequency-words.js'
import type { LinkedGuide } from '../link.js'
import type { RuleContext } from '../rule-context.js'

/** Two problems are alike when no check's answers differ by more than this share (total variation). Our judgement. */
const ALIKE_BELOW = 0.2

/** Warning. Each pair of a host's problems has a check that tells them apart. */
export function problemsDistinguishableRule(context: RuleContext): void {
  const { guide } = context
  const reported = new Set<string>()
  for (const host of guide.hosts.keys()) {
    const problems = [...guide.problems.values()].filter(({ hosts }) => hosts.some((entry) => entry.host.value === host))
    problems.forEach((one, index) => {
      for (const other of problems.slice(index + 1)) {
        const pair = `${one.id.value} ${other.id.value}`
        if (reported.has(pair) || aCheckTellsApart(guide, one, other)) continue
        reported.add(pair)
        context.warn({
          code: 'ALIKE_PROBLEMS', at: [one.id.at, other.id.at], of: one,
          message: `No check tells "${one.id.value}" from "${other.id.value}". Expected a check in both profiles whose answers differ, or one problem instead of two.`,
        })
      }
    })
  }
}

/**
 * Whether the total variation distance of the two problems reaches the limit at a check that both profiles mention, or
 * that one mentions with an answer more telling than chance.
 */
function aCheckTellsApart(guide: LinkedGuide, one: ProblemDraft, other: ProblemDraft): boolean {
  for (const check of new Set([...one.shows, ...other.shows].map((sign) => sign.check.value))) {
    const labels = guide.checks.get(check)?.answers.map(({ label }) => label.value)
    if (labels === undefined) continue
    const shares = [one, other].map(({ shows }) => {
      const sign = shows.find((entry) => entry.check.value === check)
      return sharesFromWords(labels.map((label) => sign?.answers.find((entry) => entry.label.value === label)?.word ?? null))
    })
    const [a, b] = shares
    if (a === undefined || b === undefined) continue
    let distance = 0
    for (let answer = 0; answer < a.length; answer++) distance += Math.abs((a[answer] ?? 0) - (b[answer] ?? 0)) / 2
    if (distance >= ALIKE_BELOW) return true
  }
  return false
}
