import type { SettlePlace } from '../../../shared/index.js'
import { DeskFault } from '../desk-fault.js'
import { hostNamed, nodeNamed } from '../guide-names.js'
import type { CaseChange } from './case-change.js'
import { chosenJob } from './chosen-job.js'
import { hearAnswers, withSaid } from './hear-words.js'

/**
 * Settles what plant the case is about and where in its tree the complaint starts. The words are listened to once more:
 * what they answer depends on the plant. A job that is taken by its name answers the check where it was offered.
 */
export function placeChange({ host: hostName, node }: SettlePlace): CaseChange {
  return {
    kind: 'place',
    content: { host: hostName, node },
    apply(now, knowledge) {
      const { guide } = knowledge
      const host = hostNamed(guide, hostName)
      if (host === null) throw new DeskFault('UNKNOWN_HOST', { words: { host: hostName } })
      if (node !== null && nodeNamed(host, node) === null) {
        throw new DeskFault('UNKNOWN_NODE', { words: { host: hostName, node } })
      }
      const job = chosenJob(guide, host, node, now.matched)
      const said = hearAnswers(knowledge, now.words, hostName).filter(({ check }) => check !== job?.check)
      const findings = withSaid(now.evidence.findings, job === null ? said : [...said, job])
      return { ...now, evidence: { ...now.evidence, start: { host: hostName, node }, findings } }
    },
  }
}
