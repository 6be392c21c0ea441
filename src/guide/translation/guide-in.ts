import type { Advice, Check, Guide, Host, LayWords, Problem, RedFlag, Region, Target, Translation, TreeNode } from '../guide.js'
import { type OriginalKind, slotName } from './texts-of.js'

/** Views made before, by guide and language: each has its own hosts, and models are kept by host. */
const views = new WeakMap<Guide, Map<string, Guide>>()

/** The languages a guide has words in, its region's own first. */
export function languagesOf(guide: Guide): string[] {
  return [guide.region.language, ...[...guide.translations.keys()].filter((language) => language !== guide.region.language)]
}

/**
 * The same guide with its words in another language; ids, numbers, labels, likelihoods and the hash are the same.
 * Words that are missing stand in the region's own language and are listed in `untranslated`. What people say (names,
 * entries, sayings, red flags) is heard in both languages, the one asked for first.
 * @param language a BCP 47 tag; looked up by taking subtags away from its end (RFC 4647 section 3.4), so es-MX finds es
 * @returns the guide itself for its own language and for one it has no words in
 */
export function guideIn(guide: Guide, language: string): Guide {
  const found = lookUp(guide, language)
  const translation = found === null ? undefined : guide.translations.get(found)
  if (translation === undefined) return guide
  let ofGuide = views.get(guide)
  if (ofGuide === undefined) {
    ofGuide = new Map()
    views.set(guide, ofGuide)
  }
  let view = ofGuide.get(translation.language)
  if (view === undefined) {
    view = makeView(guide, translation)
    ofGuide.set(translation.language, view)
  }
  return view
}

/**
 * The language a text of the guide stands in, for a `lang` attribute (WCAG 2.2, 3.1.2).
 * @param guide the view that the text came from
 * @param text a whole text of it: a name, a question, one line of advice
 */
export function languageOfText(guide: Guide, text: string): string {
  return guide.untranslated.has(text) ? guide.region.language : guide.language
}

function lookUp(guide: Guide, language: string): string | null {
  const known = new Map(languagesOf(guide).map((tag) => [tag.toLowerCase(), tag]))
  const parts = language.toLowerCase().split('-')
  for (let length = parts.length; length > 0; length -= 1) {
    const tag = known.get(parts.slice(0, length).join('-'))
    if (tag !== undefined) return tag
  }
  return null
}

/** Reads words of one file of the guide, and notes those that are not there. */
interface Reader {
  text(own: string, ...path: string[]): string
  list(own: readonly string[], ...path: string[]): readonly string[]
  /** In both languages. */
  phrases(own: readonly string[], ...path: string[]): readonly string[]
}

function makeView(guide: Guide, translation: Translation): Guide {
  const untranslated = new Set<string>()
  const reader = (kind: OriginalKind, id: string): Reader => {
    const said = (path: readonly string[]): readonly string[] | undefined => translation.texts.get(slotName(kind, id, path))
    const list = (own: readonly string[], ...path: string[]): readonly string[] => {
      const words = said(path)
      if (words === undefined) for (const text of own) untranslated.add(text)
      return words ?? own
    }
    return {
      list,
      text: (own, ...path) => list([own], ...path)[0] ?? own,
      phrases: (own, ...path) => [...new Set([...said(path) ?? [], ...own])],
    }
  }
  const view: Guide = {
    ...guide,
    language: translation.language,
    region: regionIn(guide.region, reader('region', guide.region.id)),
    checks: guide.checks.map((check) => checkIn(check, reader('check', check.id))),
    problems: guide.problems.map((problem) => problemIn(problem, reader('problem', problem.id))),
    hosts: guide.hosts.map((host) => hostIn(host, guide, reader('host', host.id))),
    redFlags: guide.redFlags.map((redFlag) => redFlagIn(redFlag, translation, reader('red flag', redFlag.id))),
    layWords: joinLayWords(translation.layWords, guide.layWords),
    untranslated,
  }
  return Object.freeze(view)
}

function checkIn(check: Check, words: Reader): Check {
  return {
    ...check,
    ask: words.text(check.ask, 'ask'), how: words.text(check.how, 'how'), why: words.text(check.why, 'why'),
    answers: check.answers.map((answer) => ({
      ...answer,
      shown: words.text(answer.shown, 'answers', answer.label, 'shown'),
      saidAs: words.phrases(answer.saidAs, 'answers', answer.label, 'said as'),
    })),
  }
}

function problemIn(problem: Problem, words: Reader): Problem {
  return {
    ...problem,
    name: words.text(problem.name, 'name'), what: words.text(problem.what, 'what'),
    advice: adviceIn(problem.advice, words),
    cautions: words.list(problem.cautions, 'cautions'),
    watch: problem.watch === null ? null : { escalate: words.text(problem.watch.escalate, 'watch', 'escalate') },
  }
}

function adviceIn(advice: Advice, words: Reader): Advice {
  return {
    bottomLine: words.text(advice.bottomLine, 'advice', 'bottom line'),
    doNow: words.list(advice.doNow, 'advice', 'do now'),
    notWorthDoing: words.list(advice.notWorthDoing, 'advice', 'not worth doing'),
    nextYear: words.list(advice.nextYear, 'advice', 'next year'),
    spray: advice.spray === 'none' ? advice.spray : words.text(advice.spray, 'advice', 'spray'),
  }
}

function hostIn(host: Host, guide: Guide, words: Reader): Host {
  return {
    ...host,
    name: words.text(host.name, 'name'), called: words.phrases(host.called, 'called'),
    nodes: host.nodes.map((node) => nodeIn(node, guide, words)),
  }
}

function nodeIn(node: TreeNode, guide: Guide, words: Reader): TreeNode {
  const path = ['nodes', node.name]
  const handOver = (target: Target, ...end: string[]): Target =>
    (target.kind === 'hand over' ? { ...target, because: words.text(target.because, ...path, ...end, 'hand over') } : target)
  const labels = (guide.checks[node.check]?.answers ?? []).map(({ label }) => label)
  return {
    ...node,
    entry: words.phrases(node.entry, ...path, 'entry'),
    answers: node.answers.map((target, answer) => handOver(target, 'answers', labels[answer] ?? '')),
    notSure: node.notSure === null ? null : handOver(node.notSure, 'not sure'),
  }
}

function redFlagIn(redFlag: RedFlag, translation: Translation, words: Reader): RedFlag {
  return {
    ...redFlag,
    title: words.text(redFlag.title, 'title'),
    hear: [...translation.hear[redFlag.number] ?? [], ...redFlag.hear],
    card: { ...redFlag.card, doNow: words.list(redFlag.card.doNow, 'card', 'do now'), doNot: words.list(redFlag.card.doNot, 'card', 'do not') },
    afterwards: redFlag.afterwards === null ? null : { ...redFlag.afterwards, offer: words.text(redFlag.afterwards.offer, 'afterwards', 'offer') },
    looking: redFlag.looking === null ? null : words.text(redFlag.looking, 'looking'),
  }
}

function regionIn(region: Region, words: Reader): Region {
  return {
    ...region,
    name: words.text(region.name, 'name'), helpline: words.text(region.helpline, 'helpline'),
    districts: new Map([...region.districts].map(([id, name]) => [id, words.text(name, 'districts', id)])),
    numbers: new Map([...region.numbers].map(([id, { name, number }]) => [id, { name: words.text(name, 'numbers', id, 'name'), number }])),
  }
}

function joinLayWords(first: LayWords, second: LayWords): LayWords {
  return {
    alike: [...first.alike, ...second.alike], otherPlants: [...first.otherPlants, ...second.otherPlants],
    things: [...first.things, ...second.things], grounds: [...first.grounds, ...second.grounds], errands: [...first.errands, ...second.errands],
    kinds: new Map([...new Set([...first.kinds.keys(), ...second.kinds.keys()])].map((kind) => [kind, [...(first.kinds.get(kind) ?? []), ...(second.kinds.get(kind) ?? [])]])),
  }
}
