import type { Random } from '../../../engine/index.js'
import type { Guide, Host } from '../../../guide/index.js'
import { type IsoWeek, mondayOfWeek, type WeeklyCount, weeksBetween } from '../../../season/index.js'

/**
 * Cases that come in a month, January first, as shares of the busiest: the yearly shape of what a plant clinic gets
 * (Arkansas Plant Health Clinic, summary of 2018: 50, 95, 131, 290, 638, 766, 447, 413, 296, 240, 74 and 25 samples).
 */
const MONTHS = [50, 95, 131, 290, 638, 766, 447, 413, 296, 240, 74, 25].map((samples) => samples / 766)
/** Cases of a district in the busiest week. */
const BUSIEST = 14
/** Out of its months a problem is reported so much more rarely. */
const OUT_OF_MONTHS = 0.04
const SETTLED = 0.3

/** A problem that is much commoner than usual in one district for some weeks. */
export interface Outbreak {
  readonly problem: string
  readonly district: string
  readonly weeks: readonly IsoWeek[]
  /** By how much it is commoner. */
  readonly factor: number
}

/**
 * Makes up the reports of some weeks from the guide's own shares and months, with an outbreak or two in them. Invented, for
 * the demonstration.
 */
export function inventReports(
  guide: Guide, random: Random, districts: readonly string[], from: IsoWeek, until: IsoWeek, outbreaks: readonly Outbreak[],
): WeeklyCount[] {
  const counts = new Map<string, WeeklyCount>()
  const hosts = guide.hosts.filter(({ isOfAnyPlant }) => !isOfAnyPlant)
  for (const week of weeksBetween(from, until)) {
    const month = Number(mondayOfWeek(week).slice(5, 7))
    for (const district of districts) {
      const cases = poisson(random, BUSIEST * (MONTHS[month - 1] ?? 0))
      for (let made = 0; made < cases; made++) {
        const host = hosts[Math.floor(random() * hosts.length)]
        if (host !== undefined) add(counts, random, { problem: drawProblem(guide, host, random, month), host: host.id, district, week })
      }
      for (const outbreak of outbreaks) {
        if (outbreak.district !== district || !outbreak.weeks.includes(week)) continue
        const host = guide.hosts.find((one) => one.problems.some((number) => guide.problems[number]?.id === outbreak.problem))
        const more = host === undefined ? 0 : poisson(random, outbreak.factor)
        for (let made = 0; made < more; made++) add(counts, random, { problem: outbreak.problem, host: host?.id ?? '', district, week })
      }
    }
  }
  return [...counts.values()]
}

function add(counts: Map<string, WeeklyCount>, random: Random, what: Pick<WeeklyCount, 'problem' | 'host' | 'district' | 'week'>): void {
  const key = JSON.stringify([what.problem, what.host, what.district, what.week])
  const before = counts.get(key)
  const isSettled = random() < SETTLED
  counts.set(key, {
    ...what, reports: (before?.reports ?? 0) + (isSettled ? 1 : 0.75 + 0.23 * random()), cases: (before?.cases ?? 0) + 1,
    settled: (before?.settled ?? 0) + (isSettled ? 1 : 0),
  })
}

function drawProblem(guide: Guide, host: Host, random: Random, month: number): string {
  const weights = host.problems.map((number, row) => {
    const months = guide.problems[number]?.months ?? []
    // What must be reported is not strewn about: it comes by an outbreak or not at all.
    if (guide.problems[number]?.watch !== null) return 0
    return (host.commonness[row] ?? 0) * (months.length === 0 || months.includes(month) ? 1 : OUT_OF_MONTHS)
  })
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0)
  const row = weights.findIndex((weight) => (left -= weight) < 0)
  return guide.problems[host.problems[Math.max(0, row)] ?? 0]?.id ?? ''
}

/** A count about a mean: Knuth's method, for small means (The Art of Computer Programming 2, 3.4.1, from memory). */
function poisson(random: Random, mean: number): number {
  const floor = Math.exp(-mean)
  let product = random()
  let count = 0
  while (product > floor) {
    product *= random()
    count += 1
  }
  return count
}
