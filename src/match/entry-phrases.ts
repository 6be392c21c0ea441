import { type Guide, type Host, type HostId, isJobHost, type NodeName, type ProblemId, type Target } from '../guide/index.js'
import { type Meanings, readTerms, type Term } from './meanings.js'
import type { Speech } from './languages/speech.js'
import { tokenize } from './tokens.js'

/** A tree node at which a complaint may start. */
export interface EntryNode {
  readonly host: HostId
  readonly hostNumber: number
  readonly node: NodeName
  /** Problems that can be reached from here, following the tree and the trees it leads to. */
  readonly problems: readonly ProblemId[]
  /** The same, as numbers. */
  readonly reached: readonly number[]
  /** Numbers of the host's own problems only. */
  readonly own: readonly number[]
  /** Share of its host's problems that it can still reach: small at a telling node, 1 at the top. */
  readonly width: number
}

export interface EntryPhrase {
  readonly text: string
  readonly node: number
  /** Sum of what its words tell. */
  readonly telling: number
  /** True when it names nothing but the plant or small words. */
  readonly general: boolean
  /** What its words are compared by. */
  readonly keys: readonly string[]
}

/** Where one key occurs: parallel lists, by phrase number. */
export interface Postings {
  readonly phrases: Int32Array
  /** Number of the very word, to tell it from one used alike. */
  readonly exacts: Int32Array
  readonly negated: Uint8Array
  /** How much the key tells: rare ones more than common ones (inverse document frequency over the phrases). */
  readonly tells: number
  /** Share of the hosts that have the key in a phrase, 0 to 1: how much it is a word of plants in trouble whatever the plant. */
  readonly shared: number
}

/** The entry phrases of all hosts as an inverted index: only phrases that share a word with the question are ever looked at. */
export interface EntryPhrases {
  readonly nodes: readonly EntryNode[]
  /** Phrases of one node stand together, and nodes of one host. */
  readonly phrases: readonly EntryPhrase[]
  readonly postings: ReadonlyMap<string, Postings>
  readonly exactNumbers: ReadonlyMap<string, number>
  /** First phrase of each host, and one past the last, by host number. */
  readonly ranges: ReadonlyMap<number, readonly [number, number]>
  readonly averageTelling: number
  /** Words in phrases, for respelling. */
  readonly words: ReadonlySet<string>
}

/** Gathers and weighs the entry phrases of a guide. */
export function buildEntryPhrases(guide: Guide, meanings: Meanings): EntryPhrases {
  const { speech } = meanings
  const nodes: EntryNode[] = []
  const phrases: { text: string; node: number; terms: readonly Term[]; general: boolean }[] = []
  const ranges = new Map<number, readonly [number, number]>()
  const words = new Set<string>()
  for (const host of guide.hosts) {
    const first = phrases.length
    const ownNames = namesThatSayNothing(guide, host, speech)
    for (const node of host.nodes) {
      if (node.entry.length === 0) continue
      const reached = reachableProblems(guide, host.number, node.number)
      const own = reached.filter((number) => host.problems.includes(number))
      nodes.push({
        host: host.id, hostNumber: host.number, node: node.name, reached, own, width: host.problems.length === 0 ? 1 : own.length / host.problems.length,
        problems: reached.flatMap((number) => guide.problems[number]?.id ?? []),
      })
      for (const text of node.entry) {
        const tokens = tokenize(text)
        const all = readTerms(meanings, tokens)
        // The host's own name in its phrases says nothing about the complaint. A phrase with no other telling word
        // ("it is not well") keeps what it has: better a weak way in than none.
        const complaint = all.filter(({ exact }) => !ownNames.has(exact))
        const general = complaint.length === 0
        const terms = general ? (all.length > 0 ? all : smallWords(tokens, speech)) : complaint
        if (terms.length === 0) continue
        for (const { text: word } of tokens) if (!speech.stopWords.has(word)) words.add(word)
        phrases.push({ text, node: nodes.length - 1, terms: uniqueKeys(terms), general })
      }
    }
    ranges.set(host.number, [first, phrases.length])
  }
  const exactNumbers = new Map<string, number>()
  const lists = new Map<string, { phrases: number[]; exacts: number[]; negated: number[] }>()
  for (const [number, { terms }] of phrases.entries()) {
    for (const { key, exact, negated } of terms) {
      let exactNumber = exactNumbers.get(exact)
      if (exactNumber === undefined) exactNumbers.set(exact, exactNumber = exactNumbers.size)
      let list = lists.get(key)
      if (list === undefined) lists.set(key, list = { phrases: [], exacts: [], negated: [] })
      list.phrases.push(number)
      list.exacts.push(exactNumber)
      list.negated.push(negated ? 1 : 0)
    }
  }
  const postings = new Map([...lists].map(([key, list]): [string, Postings] => [key, {
    phrases: Int32Array.from(list.phrases), exacts: Int32Array.from(list.exacts), negated: Uint8Array.from(list.negated),
    tells: Math.log(1 + phrases.length / list.phrases.length),
    shared: new Set(list.phrases.map((number) => nodes[phrases[number]?.node ?? 0]?.hostNumber)).size / guide.hosts.length,
  }]))
  const total = [...postings.values()].reduce((sum, { tells }) => sum + tells, 0)
  return {
    nodes, postings, exactNumbers, ranges, words,
    phrases: phrases.map(({ text, node, terms, general }) => ({
      text, node, general, keys: terms.map(({ key }) => key), telling: terms.reduce((sum, { key }) => sum + (postings.get(key)?.tells ?? 0), 0),
    })),
    averageTelling: postings.size === 0 ? 1 : total / postings.size,
  }
}

/** Problems that can be reached from a node, following the tree and the trees it leads to, in the order met. */
function reachableProblems(guide: Guide, host: number, node: number): readonly number[] {
  const problems = new Set<number>()
  const seen = new Set<string>()
  const open: (Target & { readonly from: number })[] = [{ kind: 'host', host, node, from: host }]
  for (let target = open.pop(); target !== undefined; target = open.pop()) {
    if (target.kind === 'problem') problems.add(target.problem)
    if (target.kind !== 'node' && target.kind !== 'host') continue
    const at = target.kind === 'host' ? target.host : target.from
    const key = `${at}:${target.node}`
    if (seen.has(key)) continue
    seen.add(key)
    const here = guide.hosts[at]?.nodes[target.node]
    if (here === undefined) continue
    const leads = here.notSure === null ? here.answers : [...here.answers, here.notSure]
    for (const lead of [...leads].reverse()) open.push({ ...lead, from: at })
  }
  return [...problems]
}

/**
 * Stems of the host's one-word names that say nothing about a complaint. A name that is also the name of one of its
 * problems ("bindweed" among the weeds) says a good deal, unless the whole tree is called so: "clematis" in "clematis wilt".
 */
function namesThatSayNothing(guide: Guide, host: Host, { stem }: Speech): ReadonlySet<string> {
  const problems = [...host.problems].flatMap((number) => guide.problems[number]?.name ?? [])
  const inProblems = (name: string): number => problems.filter((problem) => tokenize(problem).some(({ text }) => stem(text) === name)).length
  const ownName = stem(tokenize(host.name).map(({ text }) => text).join(' '))
  return new Set([host.name, ...host.called].flatMap((name) => {
    const words = tokenize(name)
    const bare = stem(words[0]?.text ?? '')
    if (words.length !== 1) return []
    if (bare === ownName && !isJobHost(guide, host)) return [bare]
    const times = inProblems(bare)
    return times > 0 && times <= Math.max(1, problems.length / 4) ? [] : [bare]
  }))
}

function smallWords(tokens: ReturnType<typeof tokenize>, { stem }: Speech): readonly Term[] {
  return tokens.map(({ text }, place) => ({ key: stem(text), exact: stem(text), first: place, last: place, negated: false }))
}

function uniqueKeys(terms: readonly Term[]): readonly Term[] {
  const seen = new Map<string, Term>()
  for (const term of terms) if (!seen.has(term.key)) seen.set(term.key, term)
  return [...seen.values()]
}
