import type { CheckRows, ComplaintRows, HostRows, ProblemRows, RegionView, Suggestions } from '../../../shared/index.js'
import { type Guide, type Host, isJobHost, type Problem } from '../../guide/index.js'
import { hearWords } from '../cases/hear-words.js'
import { DeskFault } from '../desk-fault.js'
import { hostNamed } from '../guide-names.js'
import type { Knowledge } from '../room.js'
import { answerText } from './answer-text.js'
import { checkCard, flagCards } from './cards.js'
import { offers } from './place-view.js'
import { withUntranslated } from './untranslated.js'

/** The host name that stands for every host in the list of problems. */
const ANY_HOST = 'any'

/** What the screens need to know of the region. */
export function regionView({ region }: Guide, sendsMail: boolean): RegionView {
  return {
    name: region.name, helpline: region.helpline, demonstration: region.demonstration, units: region.units,
    language: region.language, districts: [...region.districts].map(([district, name]) => ({ district, name })),
    answerWithinHours: region.targets.answerWithinHours, sendsMail,
  }
}

/** Every plant to choose from, by name in the guide's language; after them the jobs in the garden. */
export function hostRows(guide: Guide, own = guide): HostRows {
  const hosts = guide.hosts.map((host): HostRows['hosts'][number] => ({ host: host.id, name: host.name, called: [...host.called], ...isJobHost(guide, host) ? { job: true } : {} }))
  return withUntranslated(guide, own, { hosts: hosts.sort((a, b) => Number(a.job ?? false) - Number(b.job ?? false) || a.name.localeCompare(b.name, guide.language)) })
}

/** Every complaint to choose from for one plant, in the order of its tree. */
export function complaintRows(guide: Guide, hostName: string, own = guide): ComplaintRows {
  const entries = findHost(guide, hostName).nodes.filter(({ entry }) => entry.length > 0)
  return withUntranslated(guide, own, { complaints: entries.map(({ name, entry }) => ({ node: name, phrases: [...entry] })) })
}

/**
 * The problems of one plant, or of all plants for 'any', by name, with their advice for an answer.
 * @param asked the guide in the language of the asker, who will read the advice
 */
export function problemRows(guide: Guide, hostName: string, asked = guide): ProblemRows {
  const problems = hostName === ANY_HOST ? guide.problems : problemsOf(guide, findHost(guide, hostName))
  return {
    problems: problems.map((problem) => {
      const { text, leftOut } = answerText(asked, asked.problems[problem.number] ?? problem)
      return {
        problem: problem.id, name: problem.name, what: problem.what, plants: plantsOf(guide, problem),
        advice: text, leftOut: [...leftOut],
      }
    }).sort((a, b) => a.name.localeCompare(b.name, 'en')),
  }
}

/** The checks that tell the problems of one plant apart, or all checks for 'any', in the guide's order. */
export function checkRows(guide: Guide, hostName: string): CheckRows {
  const checks = hostName === ANY_HOST
    ? guide.checks : [...findHost(guide, hostName).checks].flatMap((number) => guide.checks[number] ?? [])
  return { checks: checks.map(checkCard) }
}

/** What words would lead to, were they a case. Nothing is kept. */
export function suggestionsFor(knowledge: Knowledge, words: string): Suggestions {
  const { guide } = knowledge
  const { redFlags, matched } = hearWords(knowledge, [words])
  return {
    ...offers(guide, guide, matched),
    cards: flagCards(guide, redFlags),
  }
}

function findHost(guide: Guide, name: string): Host {
  const host = hostNamed(guide, name)
  if (host === null) throw new DeskFault('HOST_NOT_FOUND')
  return host
}

function problemsOf(guide: Guide, host: Host): Problem[] {
  return [...host.problems].flatMap((number) => guide.problems[number] ?? [])
}

function plantsOf(guide: Guide, { number }: Problem): { host: string; name: string }[] {
  return guide.hosts.filter(({ problems }) => problems.includes(number)).map(({ id, name }) => ({ host: id, name }))
}
