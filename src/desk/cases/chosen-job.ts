import type { Guide, Host } from '../../guide/index.js'
import { nodeNamed } from '../guide-names.js'
import type { KeptFinding, KeptMatch } from './case-file.js'

/**
 * What choosing a job by its name says already. A job that the whole letter asks for is offered by its own name
 * ("Repotting") at a place in its tree; whoever takes that offer has answered the check there, where a single answer leads
 * to that job. Null where nothing was offered so, or where the check must still be looked at.
 */
export function chosenJob(guide: Guide, host: Host, node: string | null, { entries }: Pick<KeptMatch, 'entries'>): KeptFinding | null {
  const offered = entries.find((entry) => entry.host === host.id && entry.node === node)
  const job = guide.problems.find((problem) => problem.kind === 'garden job' && problem.name === offered?.phrase)
  const place = node === null ? null : nodeNamed(host, node)
  const check = place === null ? undefined : guide.checks[place.check]
  if (job === undefined || place === null || check === undefined) return null
  const [answer, ...others] = check.answers.filter((_, number) => {
    const target = place.answers[number]
    return target?.kind === 'problem' && target.problem === job.number
  })
  return answer === undefined || others.length > 0 ? null : { check: check.id, answer: answer.label, from: 'said' }
}
