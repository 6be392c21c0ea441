import type { Report } from './report.js'

/** Somebody who asks of the same problem again within half a year tells of the same trouble. Our judgement. */
export const REPEAT_DAYS = 183

const DAY_MS = 86_400_000

/**
 * The reports that only repeat an earlier one: of the same asker and the same problem, within half a year of the one that
 * counts. The earliest counts; of one day the case opened first.
 * @returns their case numbers
 */
export function repeatsAmong(reports: readonly Pick<Report, 'caseId' | 'problem' | 'askedOn' | 'asker'>[]): Set<number> {
  const repeats = new Set<number>()
  const counted = new Map<string, number>()
  const inOrder = [...reports].sort((a, b) => (a.askedOn < b.askedOn ? -1 : a.askedOn > b.askedOn ? 1 : a.caseId - b.caseId))
  for (const { caseId, problem, askedOn, asker } of inOrder) {
    const key = JSON.stringify([asker, problem])
    const last = counted.get(key)
    const at = Date.parse(askedOn)
    if (last !== undefined && at - last <= REPEAT_DAYS * DAY_MS) repeats.add(caseId)
    else counted.set(key, at)
  }
  return repeats
}
