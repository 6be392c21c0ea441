import type { GuideErrorCode, GuideWarningCode } from './guide-error.js'

/** For authors: what each code means and how to put it right (`frondline proof --explain CODE`). */
export const errorCodes: Readonly<Record<GuideErrorCode | GuideWarningCode, string>> = {
  YAML: 'The text is not YAML. Look at the place named and a little before it: a missing quote, a tab, a colon inside a text without quotes.',
  SHAPE: 'A value is missing or of the wrong kind. The message says what was expected; trees/README.md shows each kind of file whole.',
  UNKNOWN_KEY: 'A key is not one this kind of file has. Most often a slip of the pen: take the name suggested.',
  WRONG_FOLDER: 'The file stands in a folder that is not read. Move it to checks, problems, hosts, red-flags or casebook.',
  NO_REGION: 'The guide needs one region.yaml with its districts and the numbers to call.',
  DUPLICATE_NAME: 'Two files, or two cases, have the same name. Rename one.',
  FILE_NAME: 'A file is named for the id inside it. Rename the file or the id.',
  UNKNOWN_CHECK: 'No file in checks has this name. Take the name suggested, or write the check.',
  UNKNOWN_ANSWER: 'The check has no answer of this name. Answers are written letter for letter as the check has them.',
  UNKNOWN_NODE: 'The tree has no node of this name. Take the name suggested, or write the node.',
  UNKNOWN_PROBLEM: 'No file in problems has this name. Take the name suggested, or write the problem.',
  UNKNOWN_HOST: 'No file in hosts has this name. Take the name suggested, or write the host.',
  UNKNOWN_RED_FLAG: 'No file in red-flags has this name.',
  UNKNOWN_NUMBER: 'region.yaml has no number of this name. Add it there: numbers never stand in other files.',
  UNKNOWN_DISTRICT: 'region.yaml has no district of this name.',
  UNKNOWN_WARNING: 'accepts names a warning that does not exist.',
  UNANSWERED: 'A node leaves answers of its check without a target. Say where each leads, or give other answers.',
  CYCLE: 'A path comes back to where it was. Lead one of the answers elsewhere.',
  UNREACHABLE_NODE: 'No answer leads to the node and it has no entry phrases. Link it, or take it away.',
  DEAD_END: 'An answer has no target. Give a node, a problem, a hand-over or another host.',
  CONTRADICTS_PROFILE: 'A path leads to a problem through an answer that its own profile says is never seen. One of the two is wrong.',
  NOT_ITS_PROBLEM: 'The tree ends in a problem that does not list this host. Add the host to the problem with how common it is.',
  PROBLEM_NOT_REACHED: 'The problem lists a host whose tree never ends in it. Add a branch, or take the host off the list.',
  WATCH_WITHOUT_ESCALATION: 'A problem that must be reported needs watch: { escalate: ... } asking for a photo and the place, and cost: regulated.',
  SHARES_TOO_LARGE: 'The frequency words of one check add up to far more than 100 %. Only one answer is given at a time: use rarer words.',
  LAY_WORD_TWICE: 'In lay-words.yaml each word stands in one group of alike words only. Choose the group where it helps most.',
  PLANT_IS_HOST: 'A plant among the other plants of lay-words.yaml is one of the names of a host. Take it out of the list.',
  RESERVED_ANSWER: 'not sure, can\'t look now and other answers are not a check\'s own answers.',
  ALIKE_PROBLEMS: 'No check tells these two problems apart. Find one, or make them one problem, or end in a sample to the lab and accept the warning with that reason.',
  PATH_LENGTH: 'A caller would be asked more than 8 checks. Ask the most telling ones first.',
  READING_GRADE: 'The text is harder than reading grade 8. Shorten sentences; use plainer words.',
  SHADOWED_ENTRY: 'An entry phrase stands twice in a tree, or names another host.',
  FEW_CHECKS: 'A profile with fewer than two checks lets one answer decide. Add what else the problem shows.',
  OLD_REVIEW: 'The last review is more than three years old. Have a specialist read it and set the date.',
  UNUSED_CHECK: 'Nothing asks or mentions the check.',
}

export const warningCodes: readonly GuideWarningCode[] = [
  'ALIKE_PROBLEMS', 'PATH_LENGTH', 'READING_GRADE', 'SHADOWED_ENTRY', 'FEW_CHECKS', 'OLD_REVIEW', 'UNUSED_CHECK',
]
