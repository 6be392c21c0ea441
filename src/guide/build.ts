import { createHash } from 'node:crypto'
import type { CheckDraft, HostDraft, ProblemDraft, RedFlagDraft, RegionDraft, TargetDraft, WorkedCaseDraft } from './drafts.js'
import { sharesFromWords } from './frequency-words.js'
import type {
  CaseEnd, Check, CheckId, Guide, Host, HostId, HowCommon, NodeName, Problem, ProblemId, RedFlag, RedFlagId, Sign, Target, TreeNode, WorkedCase,
} from './guide.js'
import { buildLayWords } from './build-lay-words.js'
import { logLikelihoods } from './likelihoods.js'
import type { LinkedGuide } from './link.js'
import { buildTranslations } from './translation/build-translations.js'
import { PLANT_NAMES, plantNames, spreadHearings, spreadWordSets } from './word-sets.js'

/** How common a problem is among a host's complaints, as relative weights. Our judgement; each step is about a factor of three. */
export const commonnessWeights: Readonly<Record<HowCommon, number>> = { 'very common': 9, common: 3, occasional: 1, rare: 0.3 }

/**
 * Builds the compiled guide from a linked guide in which the error rules found no fault.
 * Lists are in order of name, so that the same knowledge gives the same guide, however it is spread over files.
 * @throws when a name does not resolve: the rules should have refused it
 */
export function buildGuide(linked: LinkedGuide, region: RegionDraft): Guide {
  const checkDrafts = byName(linked.checks)
  const problemDrafts = byName(linked.problems)
  const hostDrafts = byName(linked.hosts)
  const redFlagDrafts = byName(linked.redFlags)
  const numbers = {
    check: numbersOf(checkDrafts), problem: numbersOf(problemDrafts), host: numbersOf(hostDrafts), redFlag: numbersOf(redFlagDrafts),
  }
  const sets = new Map([...(linked.wordSets?.sets ?? []), [PLANT_NAMES, plantNames(hostDrafts.flatMap(({ called }) => values(called)))] as const])
  const redFlags = redFlagDrafts.map((draft, number) => buildRedFlag(draft, number, sets))
  const wordSets = new Map([...sets].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, words]) => [name, spreadWordSets(words, sets, [name])]))
  const checks = checkDrafts.map((draft, number) => buildCheck(draft, number, numbers.redFlag))
  const problems = problemDrafts.map((draft, number) => buildProblem(draft, number, numbers, checks))
  const hosts = hostDrafts.map((draft, number) => buildHost(draft, number, { numbers, checks, problems, problemDrafts, hostDrafts }))
  const layWords = buildLayWords(linked.layWords)
  const beside = buildBeside(region)
  const casebook = [...linked.cases].sort(compareIds).map((draft) => buildCase(draft, numbers))
  const translations = buildTranslations(linked, numbers)
  const content = {
    region: { ...region, kind: undefined, at: undefined, districts: [...region.districts], beside: [...beside], numbers: [...region.numbers] },
    // A guide without translations has the hash it had before there were any: what is shown is the label itself.
    ...(translations.size === 0 ? {} : { translations }),
    checks: checks.map((check) => ({ ...check, answers: check.answers.map(({ shown: _, ...answer }) => answer) })),
    problems: problems.map(({ reviewedOn, sources, ...meaning }) => ({ ...meaning, reviewedOn, sources })),
    commonness: problemDrafts.map(({ hosts: some }) => some.map(({ host, how }) => [host.value, how]).sort()),
    hosts: hosts.map(({ logLikelihood: _derived, commonness: _also, ...meaning }) => meaning),
    redFlags, wordSets: [...wordSets], layWords, casebook,
  }
  return deepFreeze({
    hash: createHash('sha256').update(canonicalJson(content)).digest('hex'),
    language: region.language, untranslated: new Set<string>(), translations,
    region: {
      id: region.id, name: region.name, helpline: region.helpline, demonstration: region.demonstration, units: region.units,
      language: region.language, districts: region.districts, beside, numbers: region.numbers,
      leastPublicCount: region.leastPublicCount, onDutyMail: region.onDutyMail, targets: region.targets,
    },
    checks, problems, hosts, redFlags, wordSets, layWords, casebook,
    checkNumbers: numbers.check, problemNumbers: numbers.problem, hostNumbers: numbers.host, redFlagNumbers: numbers.redFlag,
  })
}

/** Which districts lie beside each: written once, it holds both ways. */
function buildBeside({ beside }: RegionDraft): Map<string, readonly string[]> {
  const pairs = beside.flatMap(({ district, others }) => others.flatMap((other) => [[district.value, other.value], [other.value, district.value]] as const))
  const names = [...new Set(pairs.map(([one]) => one))].sort()
  return new Map(names.map((name) => [name, [...new Set(pairs.filter(([one]) => one === name).map(([, other]) => other))].sort()]))
}

interface Numbers {
  readonly check: ReadonlyMap<string, number>
  readonly problem: ReadonlyMap<string, number>
  readonly host: ReadonlyMap<string, number>
  readonly redFlag: ReadonlyMap<string, number>
}

function buildCheck(draft: CheckDraft, number: number, redFlags: ReadonlyMap<string, number>): Check {
  return {
    id: draft.id.value as CheckId, number, ask: draft.ask.value, how: draft.how.value, why: draft.why.value, effort: draft.effort, chief: draft.chief,
    answers: draft.answers.map(({ label, saidAs, redFlag }) => ({
      label: label.value, shown: label.value, saidAs: saidAs.map(({ value }) => value), redFlag: redFlag === null ? null : resolve(redFlags, redFlag.value),
    })),
  }
}

function buildProblem(draft: ProblemDraft, number: number, numbers: Numbers, checks: readonly Check[]): Problem {
  const signs = draft.shows.map((sign): Sign => {
    const check = resolve(numbers.check, sign.check.value)
    const words = (checks[check]?.answers ?? []).map(({ label }) => sign.answers.find((entry) => entry.label.value === label)?.word ?? null)
    return { check, words, shares: sharesFromWords(words) }
  })
  return {
    id: draft.id.value as ProblemId, number, name: draft.name.value, what: draft.what.value, agent: draft.agent, kind: draft.nature,
    cost: draft.cost, months: [...draft.months].sort((a, b) => a - b),
    favouredBy: [...new Set(draft.favouredBy)].sort(), heatWindow: draft.heatWindow, signs: signs.sort((a, b) => a.check - b.check),
    sameSign: draft.sameSign.map((group) => group.map(({ value }) => resolve(numbers.check, value))),
    lookAlikes: draft.lookAlikes.map(({ value }) => resolve(numbers.problem, value)),
    advice: {
      bottomLine: draft.advice.bottomLine.value, doNow: values(draft.advice.doNow), notWorthDoing: values(draft.advice.notWorthDoing),
      nextYear: values(draft.advice.nextYear), spray: draft.advice.spray.value,
    },
    cautions: values(draft.cautions),
    watch: draft.watch === null ? null : { escalate: draft.watch.escalate?.value ?? '' },
    sources: draft.sources, reviewedOn: draft.reviewedOn.value,
  }
}

function buildHost(draft: HostDraft, number: number, parts: {
  numbers: Numbers; checks: readonly Check[]; problems: readonly Problem[]
  problemDrafts: readonly ProblemDraft[]; hostDrafts: readonly HostDraft[]
}): Host {
  const { numbers, checks, problems } = parts
  const nodeDrafts = [...draft.nodes].sort((a, b) => (a.name.value < b.name.value ? -1 : 1))
  const nodeNumbers = new Map(nodeDrafts.map(({ name }, index) => [name.value, index]))
  const target = (written: TargetDraft): Target => {
    switch (written.kind) {
      case 'node': return { kind: 'node', node: resolve(nodeNumbers, written.node) }
      case 'problem': return { kind: 'problem', problem: resolve(numbers.problem, written.problem.value) }
      case 'hand over': return { kind: 'hand over', because: written.because }
      case 'host': {
        const host = resolve(numbers.host, written.host.value)
        const other = parts.hostDrafts[host]
        const name = written.node?.value ?? other?.start.value ?? ''
        const names = (other?.nodes ?? []).map((node) => node.name.value).sort()
        return { kind: 'host', host, node: names.indexOf(name) }
      }
      case 'nowhere': throw new Error(`A target of ${draft.id.value} leads nowhere, though the rules passed it.`)
    }
  }
  const nodes = nodeDrafts.map((node, index): TreeNode => {
    const check = resolve(numbers.check, node.check.value)
    return {
      name: node.name.value as NodeName, number: index, entry: values(node.entry), check,
      answers: (checks[check]?.answers ?? []).map(({ label }) => {
        const own = node.answers.find((entry) => entry.label.value === label)?.target ?? node.otherAnswers
        if (own === null) throw new Error(`The node ${node.name.value} of ${draft.id.value} leaves "${label}" open, though the rules passed it.`)
        return target(own)
      }),
      notSure: node.notSure === null ? null : target(node.notSure),
    }
  })
  const own = parts.problemDrafts.flatMap((problem, index) => {
    const entry = problem.hosts.find(({ host }) => host.value === draft.id.value)
    return entry === undefined ? [] : [{ index, weight: commonnessWeights[entry.how] }]
  })
  const total = own.reduce((sum, { weight }) => sum + weight, 0)
  const commonness = Float64Array.from(own, ({ weight }) => weight / total)
  const checkSet = new Set(nodes.map(({ check }) => check))
  // A problem shared with other hosts may mention their own checks; only problems of this host alone add checks.
  for (const { index } of own) {
    if (parts.problemDrafts[index]?.hosts.length !== 1) continue
    for (const sign of problems[index]?.signs ?? []) checkSet.add(sign.check)
  }
  const hostChecks = [...checkSet].sort((a, b) => a - b)
  return {
    id: draft.id.value as HostId, number, name: draft.name, called: values(draft.called), start: resolve(nodeNumbers, draft.start.value),
    nodes, problems: Int32Array.from(own, ({ index }) => index), commonness, checks: Int32Array.from(hostChecks),
    logLikelihood: hostChecks.map((check) => logLikelihoods(
      own.map(({ index }) => problems[index]?.signs.find((sign) => sign.check === check)?.shares ?? null),
      commonness, checks[check]?.answers.length ?? 0,
    )),
    signGroups: groupChecks(hostChecks, own.flatMap(({ index }) => problems[index]?.sameSign ?? [])),
    isOfAnyPlant: leadsOnMoreThanItTells(nodes),
  }
}

/** Whether more answers of a tree lead on to other hosts' trees than to problems of its own. */
function leadsOnMoreThanItTells(nodes: readonly TreeNode[]): boolean {
  const ends = nodes.flatMap(({ answers }) => answers)
  const count = (wanted: Target['kind']): number => ends.filter(({ kind }) => kind === wanted).length
  return count('host') > count('problem')
}

/** Joins overlapping groups and numbers them from 0; -1 for a check that stands alone. */
function groupChecks(checks: readonly number[], groups: readonly (readonly number[])[]): Int32Array {
  const joined: Set<number>[] = []
  for (const group of groups) {
    const members = new Set(group.filter((check) => checks.includes(check)))
    for (const other of joined.filter((candidate) => group.some((check) => candidate.has(check)))) {
      for (const check of other) members.add(check)
      joined.splice(joined.indexOf(other), 1)
    }
    if (members.size > 1) joined.push(members)
  }
  return Int32Array.from(checks, (check) => joined.findIndex((members) => members.has(check)))
}

function buildRedFlag(draft: RedFlagDraft, number: number, sets: ReadonlyMap<string, readonly string[]>): RedFlag {
  return {
    id: draft.id.value as RedFlagId, number, title: draft.title.value, level: draft.level, hear: spreadHearings(draft.hear, sets),
    card: { doNow: values(draft.doNow), doNot: values(draft.doNot), call: values(draft.call) }, then: draft.then,
    afterwards: draft.afterwards === null ? null : { host: draft.afterwards.host.value as HostId, node: draft.afterwards.node.value as NodeName, offer: draft.afterwards.offer.value },
    looking: draft.looking?.value ?? null,
  }
}

function buildCase(draft: WorkedCaseDraft, numbers: Numbers): WorkedCase {
  const ends: CaseEnd = draft.ends.kind === 'problem' ? { kind: 'problem', problem: resolve(numbers.problem, draft.ends.problem.value) }
    : draft.ends.kind === 'red flag' ? { kind: 'red flag', redFlag: resolve(numbers.redFlag, draft.ends.redFlag.value) }
      : { kind: 'hand over' }
  return {
    id: draft.id.value, words: draft.words, on: draft.on, district: draft.district?.value ?? null,
    host: draft.host === null ? null : resolve(numbers.host, draft.host.value),
    findings: new Map(draft.findings.map(({ check, answer }) => [resolve(numbers.check, check.value), answer.value])),
    ends, alsoRight: draft.alsoRight.map(({ value }) => resolve(numbers.problem, value)),
  }
}

function values(located: readonly { readonly value: string }[]): string[] {
  return located.map(({ value }) => value)
}

function byName<Draft extends { readonly id: { readonly value: string } }>(drafts: ReadonlyMap<string, Draft>): Draft[] {
  return [...drafts.values()].sort(compareIds)
}

function compareIds(a: { readonly id: { readonly value: string } }, b: { readonly id: { readonly value: string } }): number {
  return a.id.value < b.id.value ? -1 : a.id.value > b.id.value ? 1 : 0
}

function numbersOf(drafts: readonly { readonly id: { readonly value: string } }[]): ReadonlyMap<string, number> {
  return new Map(drafts.map(({ id }, index) => [id.value, index]))
}

function resolve(numbers: ReadonlyMap<string, number>, name: string): number {
  const number = numbers.get(name)
  if (number === undefined) throw new Error(`"${name}" does not resolve, though the rules passed it.`)
  return number
}

/** JSON with keys in order and typed arrays and maps as lists, so that equal meaning gives equal text. */
function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) => {
    if (ArrayBuffer.isView(part)) return Array.from(part as unknown as ArrayLike<number>)
    if (part instanceof Map) return [...(part as Map<unknown, unknown>).entries()]
    if (typeof part === 'object' && part !== null && !Array.isArray(part)) {
      return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
    }
    return part
  })
}

/** Freezes plain objects and lists all the way down. Typed arrays and maps cannot be frozen; their types are read-only. */
function deepFreeze<Value>(value: Value): Value {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || Object.isFrozen(value)) return value
  if (value instanceof Map) {
    for (const part of value.values()) deepFreeze(part)
    return value
  }
  for (const part of Object.values(value)) deepFreeze(part)
  return Object.freeze(value)
}
