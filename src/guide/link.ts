import type { AnyDraft } from './any-draft.js'
import type { CasebookDraft, CheckDraft, Draft, HostDraft, LayWordsDraft, NodeDraft, ProblemDraft, RedFlagDraft, RegionDraft, TargetDraft, WordSetsDraft, WorkedCaseDraft } from './drafts.js'
import type { Report } from './parse.js'
import type { Located, SourceFile } from './source-file.js'
import { linkLanguageWords, linkTranslations } from './translation/link-translations.js'
import type { Original, OriginalKind } from './translation/texts-of.js'
import type { HeldTranslation, LanguageWordsDraft } from './translation/translation-draft.js'

/** A node together with the host whose tree it stands in. */
export interface LinkedNode {
  readonly host: HostDraft
  readonly node: NodeDraft
}

/** A way out of a node: the answer taken (null for *not sure*) and where it leads. */
export interface Way {
  readonly answer: string | null
  readonly target: TargetDraft
}

/** All drafts by name. Names are resolved through it; what does not resolve is for the rules to report. */
export interface LinkedGuide {
  readonly checks: ReadonlyMap<string, CheckDraft>
  readonly problems: ReadonlyMap<string, ProblemDraft>
  readonly hosts: ReadonlyMap<string, HostDraft>
  readonly redFlags: ReadonlyMap<string, RedFlagDraft>
  readonly region: RegionDraft | null
  /** Null when the guide has no lay-words.yaml: then every word stands only for itself. */
  readonly layWords: LayWordsDraft | null
  /** Null when the guide has no word-sets.yaml. */
  readonly wordSets: WordSetsDraft | null
  readonly cases: readonly WorkedCaseDraft[]
  /** Every translation, held against its original. */
  readonly translations: readonly HeldTranslation[]
  /** Lay words and word sets of other languages. */
  readonly languageWords: readonly LanguageWordsDraft[]
}

/**
 * Gathers drafts into one linked guide and reports names given twice and a missing region.
 * @param anyFile a file to point at when there is no region; null when there are no files at all
 */
export function linkGuide(drafts: readonly AnyDraft[], anyFile: SourceFile | null, report: Report): LinkedGuide {
  const byKind = <Kind extends AnyDraft['kind']>(kind: Kind) =>
    drafts.filter((draft): draft is Extract<AnyDraft, { kind: Kind }> => draft.kind === kind)
  const regions = byKind('region')
  const region: RegionDraft | null = regions[0] ?? null
  if (regions.length > 1) {
    const [first, second, ...others] = regions.map(({ at }) => at)
    if (first !== undefined && second !== undefined) {
      report({
        severity: 'error', code: 'DUPLICATE_NAME', at: [second, first, ...others], nearest: [],
        message: 'There is more than one region.yaml. Expected exactly one.',
      })
    }
  }
  if (region === null && anyFile !== null) {
    report({
      severity: 'error', code: 'NO_REGION', at: [{ file: anyFile, start: 0, end: 1 }], nearest: [],
      message: 'The guide has no readable region.yaml. Expected one at the top of the folder, with the districts and the numbers to call.',
    })
  }
  const layWords = byKind('lay words')
  const [firstWords, secondWords] = layWords
  if (firstWords !== undefined && secondWords !== undefined) {
    report({
      severity: 'error', code: 'DUPLICATE_NAME', at: [secondWords.at, firstWords.at], nearest: [],
      message: 'There is more than one lay-words.yaml. Expected at most one.',
    })
  }
  const wordSets = byKind('word sets')
  const [firstSets, secondSets] = wordSets
  if (firstSets !== undefined && secondSets !== undefined) {
    report({
      severity: 'error', code: 'DUPLICATE_NAME', at: [secondSets.at, firstSets.at], nearest: [],
      message: 'There is more than one word-sets.yaml. Expected at most one.',
    })
  }
  const casebooks: CasebookDraft[] = byKind('casebook')
  const cases = casebooks.flatMap(({ cases: some }) => some)
  uniqueByName('worked case', cases.map(({ id }) => ({ id })), report)
  const checks = uniqueByName('check', byKind('check'), report)
  const problems = uniqueByName('problem', byKind('problem'), report)
  const hosts = uniqueByName('host', byKind('host'), report)
  const redFlags = uniqueByName('red flag', byKind('red flag'), report)
  const originals = new Map<OriginalKind, ReadonlyMap<string, Original>>([
    ['check', checks], ['problem', problems], ['host', hosts], ['red flag', redFlags],
    ['region', new Map(region === null ? [] : [[region.id, region]])],
  ])
  return {
    checks, problems, hosts, redFlags, region,
    layWords: firstWords ?? null,
    wordSets: firstSets ?? null,
    cases,
    translations: linkTranslations(byKind('translation'), originals, report),
    languageWords: linkLanguageWords(byKind('words of a language'), report),
  }
}

/** Every way out of a node: one for each answer of its check, *other answers* spread over those not named, and *not sure*. */
export function waysOut(guide: LinkedGuide, node: NodeDraft): Way[] {
  const ways: Way[] = node.answers.map(({ label, target }) => ({ answer: label.value, target }))
  if (node.otherAnswers !== null) {
    const named = new Set(node.answers.map(({ label }) => label.value))
    for (const { label } of guide.checks.get(node.check.value)?.answers ?? []) {
      if (!named.has(label.value)) ways.push({ answer: label.value, target: node.otherAnswers })
    }
  }
  if (node.notSure !== null) ways.push({ answer: null, target: node.notSure })
  return ways
}

/** The node that a target leads to, or null when it leads to no node or to a name that does not exist. */
export function nodeOfTarget(guide: LinkedGuide, host: HostDraft, target: TargetDraft): LinkedNode | null {
  if (target.kind === 'node') return findNode(host, target.node)
  if (target.kind !== 'host') return null
  const other = guide.hosts.get(target.host.value)
  if (other === undefined) return null
  return findNode(other, target.node === null ? other.start.value : target.node.value)
}

/** A host's node by name, or null. */
export function findNode(host: HostDraft, name: string): LinkedNode | null {
  let nodes: ReadonlyMap<string, NodeDraft> | undefined = nodesByName.get(host)
  if (nodes === undefined) {
    nodes = new Map(host.nodes.map((node) => [node.name.value, node]))
    nodesByName.set(host, nodes)
  }
  const node = nodes.get(name)
  return node === undefined ? null : { host, node }
}

/** Nodes of each tree by name, gathered once: the rules look nodes up again and again, and trees may be large. */
const nodesByName = new WeakMap<HostDraft, ReadonlyMap<string, NodeDraft>>()

function uniqueByName<Named extends { readonly id: Located<string> }>(kind: string, drafts: readonly Named[], report: Report): Map<string, Named> {
  const byName = new Map<string, Named>()
  for (const draft of drafts) {
    const first = byName.get(draft.id.value)
    if (first === undefined) byName.set(draft.id.value, draft)
    else {
      report({
        severity: 'error', code: 'DUPLICATE_NAME', at: [draft.id.at, first.id.at], nearest: [],
        message: `There are two of the ${kind} "${draft.id.value}". Expected each name once.`,
      })
    }
  }
  return byName
}

export type { Draft }
