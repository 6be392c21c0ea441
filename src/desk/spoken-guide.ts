import type { Language } from '../../shared/index.js'
import { type Guide, guideIn } from '../guide/index.js'

/**
 * The guide as an asker of a language is shown it. Where it has no word in that language, all of it stands in its own and
 * says so, while what the service itself says is in the asker's.
 */
export function spokenGuide(guide: Guide, language: Language): Guide {
  const view = guideIn(guide, language)
  if (view.language === language) return view
  const views = foreign.get(guide) ?? new Map<Language, Guide>()
  foreign.set(guide, views)
  const known = views.get(language) ?? { ...guide, language, untranslated: everyText(guide) }
  views.set(language, known)
  return known
}

/** Guides without a word in a language, by language. */
const foreign = new WeakMap<Guide, Map<Language, Guide>>()

/** Every text of a guide, long or short. */
function everyText({ region, checks, problems, hosts, redFlags }: Guide): ReadonlySet<string> {
  const texts = new Set<string>()
  const read = (part: unknown): void => {
    if (typeof part === 'string') texts.add(part)
    else if (part instanceof Map) [...part.values()].forEach(read)
    else if (Array.isArray(part)) part.forEach(read)
    else if (typeof part === 'object' && part !== null && !ArrayBuffer.isView(part)) Object.values(part).forEach(read)
  }
  read([
    region.helpline, region.districts, [...region.numbers.values()].map(({ name }) => name),
    checks.map(({ ask, how, why, answers }) => [ask, how, why, answers.map(({ shown }) => shown)]),
    problems.map(({ name, what, advice, cautions, watch }) => [name, what, advice, cautions, watch]),
    hosts.map(({ name, nodes }) => [name, nodes.map(({ entry, answers, notSure }) => [entry, answers, notSure])]),
    redFlags.map(({ title, card: { doNow, doNot } }) => [title, doNow, doNot]),
  ])
  return texts
}
