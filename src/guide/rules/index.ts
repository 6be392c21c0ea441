/** The register of rules, in the order in which they run: errors first, then warnings. */
import type { Rule } from '../rule-context.js'
import { conclusionFitsProfileRule } from './conclusion-fits-profile.js'
import { enoughChecksRule } from './enough-checks.js'
import { entriesNotShadowedRule } from './entries-not-shadowed.js'
import { everyAnswerHandledRule } from './every-answer-handled.js'
import { everyProblemReachedRule } from './every-problem-reached.js'
import { fileNamedForIdRule } from './file-named-for-id.js'
import { heardAsWrittenRule } from './heard-as-written.js'
import { knownAnswersRule } from './known-answers.js'
import { knownChecksRule } from './known-checks.js'
import { knownHostsRule } from './known-hosts.js'
import { knownNodesRule } from './known-nodes.js'
import { knownProblemsRule } from './known-problems.js'
import { knownRedFlagsRule } from './known-red-flags.js'
import { knownRegionNamesRule } from './known-region-names.js'
import { knownWordSetsRule } from './known-word-sets.js'
import { knownWarningsRule } from './known-warnings.js'
import { layWordsRule } from './lay-words.js'
import { noCyclesRule } from './no-cycles.js'
import { noDeadEndsRule } from './no-dead-ends.js'
import { noUnreachableNodesRule } from './no-unreachable-nodes.js'
import { noUnusedChecksRule } from './no-unused-checks.js'
import { pathLengthRule } from './path-length.js'
import { problemsDistinguishableRule } from './problems-distinguishable.js'
import { problemsOfHostRule } from './problems-of-host.js'
import { readingGradeRule } from './reading-grade.js'
import { reservedAnswersRule } from './reserved-answers.js'
import { reviewAgeRule } from './review-age.js'
import { sharesAddUpRule } from './shares-add-up.js'
import { translationsCompleteRule } from './translations-complete.js'
import { translationsReadEasilyRule } from './translations-read-easily.js'
import { watchProblemsEscalateRule } from './watch-problems-escalate.js'

export const errorRules: readonly Rule[] = [
  fileNamedForIdRule,
  reservedAnswersRule,
  knownChecksRule,
  knownAnswersRule,
  knownNodesRule,
  knownProblemsRule,
  knownHostsRule,
  knownRedFlagsRule,
  knownRegionNamesRule,
  knownWarningsRule,
  everyAnswerHandledRule,
  noDeadEndsRule,
  noCyclesRule,
  noUnreachableNodesRule,
  problemsOfHostRule,
  everyProblemReachedRule,
  conclusionFitsProfileRule,
  watchProblemsEscalateRule,
  sharesAddUpRule,
  layWordsRule,
  knownWordSetsRule,
  heardAsWrittenRule,
]

export const warningRules: readonly Rule[] = [
  problemsDistinguishableRule,
  pathLengthRule,
  readingGradeRule,
  entriesNotShadowedRule,
  enoughChecksRule,
  reviewAgeRule,
  noUnusedChecksRule,
  translationsCompleteRule,
  translationsReadEasilyRule,
]
