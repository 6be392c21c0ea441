import Fuse from 'fuse.js'
import MiniSearch from 'minisearch'
import type { Guide } from '../../src/guide/index.js'
import { buildEntryPhrases } from '../../src/match/entry-phrases.js'
import { buildMatchIndex, type MatchIndex, matchQuestion } from '../../src/match/index.js'
import { speechOf } from '../../src/match/languages/index.js'
import { buildMeanings } from '../../src/match/meanings.js'
import type { Answered } from './match-measure.js'

/** One way of matching, made ready for a guide. */
export interface Matcher {
  readonly name: string
  readonly answer: (words: string) => Answered
}

interface Doc {
  readonly id: number
  readonly host: string
  readonly node: string
  /** The plant's name and the phrase, so that a general search can hear both at once. */
  readonly text: string
  /** All names of the plant; only for the searches that can bear them (fuse.js takes two seconds a question with them). */
  readonly called: string
}

const MOST = 40

/** Ours, and three general searches over the same entry phrases with the plant's names beside them. */
export const MATCHERS: Readonly<Record<string, (guide: Guide) => Matcher>> = {
  ours: (guide) => {
    const index = buildMatchIndex(guide)
    return { name: 'ours', answer: (words) => ourAnswer(index, words) }
  },
  'fuse.js plain': (guide) => fuse('fuse.js plain', guide, {}),
  'fuse.js token search': (guide) => fuse('fuse.js token search', guide, { useTokenSearch: true }),
  'minisearch (BM25, fuzzy, prefix)': (guide) => {
    const docs = docsOf(guide)
    const search = new MiniSearch<Doc>({ fields: ['text', 'called'], storeFields: ['host', 'node'] })
    search.addAll(docs)
    const problems = problemsOf(guide)
    return {
      name: 'minisearch (BM25, fuzzy, prefix)',
      answer: (words) => answerFrom(search.search(words, { fuzzy: 0.2, prefix: true }).slice(0, MOST).map(({ id }) => docs[Number(id)]), problems),
    }
  },
}

function fuse(name: string, guide: Guide, options: { useTokenSearch?: boolean }): Matcher {
  const docs = docsOf(guide)
  const search = new Fuse(docs, { keys: ['text'], ignoreLocation: true, threshold: 0.6, ...options })
  const problems = problemsOf(guide)
  return { name, answer: (words) => answerFrom(search.search(words, { limit: MOST }).map(({ item }) => item), problems) }
}

function ourAnswer(index: MatchIndex, words: string): Answered {
  const { redFlags, hosts, entries, findings, confidence, outOfScope } = matchQuestion(index, words)
  return { redFlags: redFlags.map(({ redFlag }) => redFlag), hosts: hosts.map(({ host }) => host), entries, findings, confidence, outOfScope }
}

function answerFrom(found: readonly (Doc | undefined)[], problems: ReadonlyMap<string, readonly string[]>): Answered {
  const seen = new Set<string>()
  const entries = found.flatMap((doc) => {
    const key = `${doc?.host ?? ''}/${doc?.node ?? ''}`
    if (doc === undefined || seen.has(key)) return []
    seen.add(key)
    return [{ host: doc.host, node: doc.node, problems: problems.get(key) ?? [] }]
  })
  return { redFlags: [], hosts: [...new Set(entries.map(({ host }) => host))], entries, findings: [], confidence: null, outOfScope: entries.length === 0 }
}

function docsOf(guide: Guide): readonly Doc[] {
  return guide.hosts
    .flatMap(({ id, name, called, nodes }) => nodes.flatMap((node) => node.entry.map((phrase) => ({ host: id, node: node.name, text: `${name} ${phrase}`, called: [name, ...called].join(' ') }))))
    .map((doc, id) => ({ ...doc, id }))
}

/** What each entry can lead to, as our index has it: the searches are measured on finding it, not on walking trees. */
function problemsOf(guide: Guide): ReadonlyMap<string, readonly string[]> {
  const { nodes } = buildEntryPhrases(guide, buildMeanings(guide.layWords, speechOf(guide)))
  return new Map(nodes.map(({ host, node, problems }) => [`${host}/${node}`, problems]))
}
