/** A weakness that does not reach us: why, and until which day (YYYY-MM-DD) that is believed. */
export interface AcceptedWeakness {
  readonly advisory: string
  readonly why: string
  readonly until: string
}

/** What a report means: each list holds one sentence a weakness. */
export interface AuditReport {
  readonly grave: readonly string[]
  readonly accepted: readonly string[]
  readonly lesser: readonly string[]
}

/** Null when the text is no report. */
export function readAuditReport(text: string, accepted: readonly AcceptedWeakness[], today: string): AuditReport | null
