export { confidenceSigns, type Signs } from './confidence.js'
export { matchLine, type MatchLine } from './line.js'
export { buildMatchIndex, findingsFor, type MatchIndex, matchQuestion } from './match.js'
export type { EntryCandidate, HeardFinding, HeardRedFlag, HeardWords, HostCandidate, Matched } from './matched.js'
