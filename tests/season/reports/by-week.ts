/** Reports by week, as the counting takes them. */
export function byWeek(reports: readonly (readonly [week: string, reports: number])[]): Map<string, { reports: number }> {
  return new Map(reports.map(([week, count]) => [week, { reports: count }]))
}
