import type { AdviceCard, CheckCard, FlagCard } from '../../../shared/index.js'
import type { Check, Guide, Host, Problem, RedFlag } from '../../guide/index.js'
import { hostNamed, redFlagNamed } from '../guide-names.js'
import { wordingOf } from '../wording/index.js'
import { sprayInWords, spraysNothing } from './spray.js'
import { surenessOf } from './sureness.js'

/** The region's number for when life is in danger. */
const EMERGENCY = 'emergency'
/** More numbers than any card has. */
const MOST_CALLS = 100

/** The region's number to call about a problem that must be reported. */
const OFFICE = 'plant health office'

/** The number to call about a problem that must be reported, or null when the region has none. */
export function officeCall(guide: Guide): { name: string; number: string } | null {
  return guide.region.numbers.get(OFFICE) ?? null
}

/** A check as it is asked. */
export function checkCard(check: Check): CheckCard {
  const others = check.answers.filter(({ label, shown }) => shown !== label)
  return {
    id: check.id, ask: check.ask, how: check.how, why: check.why, effort: check.effort,
    answers: check.answers.map(({ label }) => label),
    ...(others.length === 0 ? {} : { shown: Object.fromEntries(others.map(({ label, shown }) => [label, shown])) }),
  }
}

/** The cards of red flags by name, gravest first: emergencies, and among them those that call for help soonest. */
export function flagCards(guide: Guide, names: readonly string[]): FlagCard[] {
  const flags = names.flatMap((name) => redFlagNamed(guide, name) ?? [])
  const rank = ({ level, card }: RedFlag): number => {
    const place = card.call.findIndex((name) => name === EMERGENCY)
    return (level === 'emergency' ? 0 : MOST_CALLS) + (place < 0 ? MOST_CALLS - 1 : place)
  }
  return flags.sort((one, other) => rank(one) - rank(other)).map((flag) => flagCard(guide, flag))
}

/** A red flag with the region's numbers; a number the region does not have is left out. */
export function flagCard(guide: Guide, flag: RedFlag): FlagCard {
  const { afterwards } = flag
  const host = afterwards === null ? null : hostNamed(guide, afterwards.host)
  return {
    id: flag.id, title: flag.title, level: flag.level, doNow: [...flag.card.doNow], doNot: [...flag.card.doNot],
    calls: flag.card.call.flatMap((name) => guide.region.numbers.get(name) ?? []), then: flag.then,
    ...(afterwards === null || host === null ? {} : { afterwards: { host: host.id, hostName: host.name, node: afterwards.node, offer: afterwards.offer } }),
    ...(flag.looking === null ? {} : { looking: flag.looking }),
  }
}

/**
 * The advice on a problem that a case has come to.
 * @param host the plant of the case: what only looks much like the problem on other plants is left out
 */
export function adviceCard(guide: Guide, host: Host | null, problem: Problem, probability: number): AdviceCard {
  const { advice } = problem
  const words = wordingOf(guide)
  return {
    problem: problem.id, name: problem.name, what: problem.what, agent: problem.agent, kind: problem.kind,
    sureness: surenessOf(probability, words), probability,
    bottomLine: advice.bottomLine, doNow: [...advice.doNow], notWorthDoing: [...advice.notWorthDoing],
    nextYear: [...advice.nextYear], months: [...problem.months], spray: sprayInWords(advice.spray, words.noSpray), spraysNothing: spraysNothing(advice.spray), cautions: [...problem.cautions],
    escalate: problem.watch?.escalate ?? null,
    escalateCall: problem.watch === null ? null : officeCall(guide),
    lookAlikes: problem.lookAlikes.flatMap((number) => {
      const other = guide.problems[number]
      return other === undefined || host?.problems.includes(number) === false ? [] : [{ problem: other.id, name: other.name }]
    }),
    sources: problem.sources.map(({ title, by, year }) => ({ title, by, year })), reviewedOn: problem.reviewedOn,
  }
}
