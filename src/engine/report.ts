import type { Guide, Host } from '../guide/index.js'
import { laterEfforts } from './bars.js'
import { Belief } from './belief.js'
import { calibrationError, mean, type ReliabilityBin, reliabilityBins } from './calibration.js'
import { entropyBits } from './information.js'
import { modelOfHost } from './model.js'
import { logPriors } from './priors.js'
import type { Random } from './random.js'
import { makeCase, playCase, type Played } from './simulate.js'

/** How a host's tree and profiles do on cases made from the profiles themselves. */
export interface HostReport {
  readonly host: string
  readonly problems: number
  readonly checks: number
  /** Cases that all but `passedOn` is about: those that stayed with the host. */
  readonly cases: number
  /** Share of the cases made that the tree led on to another host, which this report cannot judge. */
  readonly passedOn: number
  /** Mean checks asked by the authored tree alone. */
  readonly treeChecks: number
  /** Share of cases in which the tree alone ends in the true problem. */
  readonly treeRight: number
  /** Mean checks asked by the engine. */
  readonly engineChecks: number
  /**
   * Entropy of the problems over what the check with most answers can tell at best, H / log2(answers): no way of asking tells
   * every problem for sure with fewer on average (source coding theorem: Shannon 1948, Bell System Technical Journal 27, section 9, from memory).
   */
  readonly leastChecks: number
  /** What a check that was asked told on average, in bits; the bound supposes log2 of the most answers. */
  readonly bitsACheck: number
  /** Share of cases in which the true problem leads at the end, concluded or not. */
  readonly accuracy: number
  /** Share of cases in which *something not listed here* leads at the end: never right here, since each made case is one of the host's problems. */
  readonly notListedLeads: number
  readonly concluded: number
  /** Share right among the concluded. */
  readonly rightWhenConcluded: number
  /** Share concluded at 95 % or more, and wrong. */
  readonly wrongAndSure: number
  readonly brier: number
  readonly logLoss: number
  readonly calibrationError: number
  readonly bins: readonly ReliabilityBin[]
  /** Pairs of problems that no check of this host separates. */
  readonly inseparable: readonly (readonly [string, string])[]
  /** The check whose answers told most, over all cases, in bits a case. */
  readonly earnsMost: { readonly check: string; readonly bitsACase: number } | null
  /** Checks of the host that were never asked, or told next to nothing when asked. */
  readonly earnsNothing: readonly string[]
  /** Problems whose made cases were least often right, worst first, at most five. */
  readonly weakest: readonly { readonly problem: string; readonly right: number; readonly cases: number }[]
  /** Longest case in checks. */
  readonly longest: number
}

/** A check that tells less than this when asked earns nothing. */
const NEXT_TO_NOTHING_BITS = 0.02

/** Two problems are inseparable when no check's answers differ by more than this (total variation distance). */
const SEPARATE_AT = 0.2

/** Of a tree that leads on to others, so many cases are made for each one wanted before the report makes do with fewer. */
const MOST_MADE = 10

/**
 * Plays made-up cases of one host and reports what came of them.
 * @param cases how many to judge; 2,000 and more give shares within about ±1.5 points. A case that is led on to another
 *   host is not judged, so more are made
 */
export function reportHost(guide: Guide, host: Host, cases: number, random: Random): HostReport {
  const played: Played[] = []
  let made = 0
  for (; played.length < cases && made < cases * MOST_MADE; made++) {
    const one = playCase(guide, host, makeCase(guide, host, random))
    if (!one.isPassedOn) played.push(one)
  }
  const model = modelOfHost(guide, host)
  const bits = new Float64Array(host.checks.length)
  const times = new Float64Array(host.checks.length)
  const belief = new Belief(model)
  for (const { asked, made } of played) {
    belief.start(logPriors(guide, host, Number(made.on.slice(5, 7))))
    for (const id of new Set(asked)) {
      const place = host.checks.indexOf(guide.checkNumbers.get(id) ?? -1)
      if (place < 0) continue
      const before = entropyBits(belief.shares())
      belief.see(place, made.answers[place] ?? 0)
      bits[place] = (bits[place] ?? 0) + before - entropyBits(belief.shares())
      times[place] = (times[place] ?? 0) + 1
    }
  }
  const nameOf = (place: number): string => guide.checks[host.checks[place] ?? -1]?.id ?? '?'
  const places = Array.from(host.checks, (_, place) => place)
  const isAskable = (place: number): boolean => !laterEfforts.includes(guide.checks[host.checks[place] ?? -1]?.effort ?? 'glance')
  const [most] = [...places].sort((a, b) => (bits[b] ?? 0) - (bits[a] ?? 0))
  const concluded = played.filter((one) => one.concluded >= 0)
  const bins = reliabilityBins(played.map(({ claimed, leading, made }) => ({ claimed, isRight: leading === made.row })))
  const capacity = Math.max(0, ...model.checks.filter((_, place) => isAskable(place)).map(({ answers }) => Math.log2(answers)))
  return {
    host: host.id, problems: host.problems.length, checks: host.checks.length, cases: played.length, passedOn: 1 - played.length / Math.max(1, made),
    treeChecks: mean(played.map(({ treeChecks }) => treeChecks)),
    treeRight: mean(played.map(({ treeEnd, made }) => (treeEnd === made.row ? 1 : 0))),
    engineChecks: mean(played.map(({ asked }) => asked.length)),
    leastChecks: capacity === 0 ? 0 : entropyBits(host.commonness) / capacity,
    bitsACheck: sumOf(bits) / Math.max(1, sumOf(times)),
    accuracy: mean(played.map(({ leading, made }) => (leading === made.row ? 1 : 0))),
    notListedLeads: mean(played.map(({ leading }) => (leading < 0 ? 1 : 0))),
    concluded: concluded.length / Math.max(1, played.length),
    rightWhenConcluded: mean(concluded.map((one) => (one.concluded === one.made.row ? 1 : 0))),
    wrongAndSure: mean(played.map((one) => (one.concluded >= 0 && one.concluded !== one.made.row && one.claimed >= 0.95 ? 1 : 0))),
    brier: mean(played.map(({ brier }) => brier)), logLoss: mean(played.map((one) => one.logLoss)),
    calibrationError: calibrationError(bins), bins,
    inseparable: inseparablePairs(guide, host),
    earnsMost: most === undefined ? null : { check: nameOf(most), bitsACase: (bits[most] ?? 0) / Math.max(1, played.length) },
    earnsNothing: places.filter((place) => isAskable(place) && (times[place] === 0 || (bits[place] ?? 0) / (times[place] ?? 1) < NEXT_TO_NOTHING_BITS)).map(nameOf),
    weakest: Array.from(host.problems, (problem, row) => {
      const own = played.filter(({ made }) => made.row === row)
      return { problem: guide.problems[problem]?.id ?? '?', cases: own.length, right: mean(own.map(({ leading }) => (leading === row ? 1 : 0))) }
    }).filter((one) => one.cases > 0).sort((a, b) => a.right - b.right).slice(0, 5),
    longest: Math.max(0, ...played.map(({ asked }) => asked.length)),
  }
}

function sumOf(numbers: Float64Array): number {
  return numbers.reduce((sum, one) => sum + one, 0)
}

function inseparablePairs(guide: Guide, host: Host): [string, string][] {
  const model = modelOfHost(guide, host)
  const pairs: [string, string][] = []
  for (let one = 0; one < host.problems.length; one++) {
    for (let other = one + 1; other < host.problems.length; other++) {
      const apart = model.checks.some(({ share, answers }) => {
        let distance = 0
        for (let answer = 0; answer < answers; answer++) {
          distance += Math.abs((share[one * answers + answer] ?? 0) - (share[other * answers + answer] ?? 0)) / 2
        }
        return distance >= SEPARATE_AT
      })
      const names = [one, other].map((row) => guide.problems[host.problems[row] ?? -1]?.id ?? '?')
      if (!apart) pairs.push([names[0] ?? '?', names[1] ?? '?'])
    }
  }
  return pairs
}
