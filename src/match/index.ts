export type { EntryCandidate, HeardRedFlag, HeardWords, HostCandidate, Matched } from './matched.js'
