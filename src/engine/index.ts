export type { Evidence, Finding, FindingOrigin, Setting } from './evidence.js'
export type { Differential, Likely, PathStep, Reading, Reason, Step } from './reading.js'
