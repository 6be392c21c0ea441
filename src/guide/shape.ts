import type { z } from 'zod'
import { closestNames } from './closest-names.js'
import type { AnyDraft, Acceptance, NodeDraft, TargetDraft, WorkedCaseDraft } from './drafts.js'
import { type HeatFault, readHeatWindow } from './heat-window.js'
import type { HeatWindow } from './guide.js'
import type { ParsedFile, Report, YamlPath } from './parse.js'
import type { Located } from './source-file.js'
import { wordSetsNamed } from './word-sets.js'
import { casebookShape, checkShape, hostShape, layWordsShape, problemShape, redFlagShape, regionShape, wordSetsShape } from './yaml-shapes.js'

/** Words with which a node handles every answer that it does not name. */
export const OTHER_ANSWERS = 'other answers'

/** "Nobody even ate it", "ate it? no". */
const DEFAULT_UNLESS_REACH = 2
const DEFAULT_WITHIN_WORDS = 12

/**
 * Turns one parsed file into a typed draft, by the folder it stands in. What does not fit is reported with its place
 * and what was expected; then null comes back.
 */
export function shapeFile(parsed: ParsedFile, report: Report): AnyDraft | null {
  const folders = parsed.file.path.split('/')
  const folder = folders[folders.length - 2] ?? ''
  const name = folders[folders.length - 1] ?? ''
  if (/^region\.ya?ml$/.test(name)) return shapeRegion(parsed, report)
  if (/^lay-words\.ya?ml$/.test(name)) return shapeLayWords(parsed, report)
  if (/^word-sets\.ya?ml$/.test(name)) return shapeWordSets(parsed, report)
  switch (folder) {
    case 'checks': return shapeCheck(parsed, report)
    case 'problems': return shapeProblem(parsed, report)
    case 'hosts': return shapeHost(parsed, report)
    case 'red-flags': return shapeRedFlag(parsed, report)
    case 'casebook': return shapeCasebook(parsed, report)
    default:
      report({
        severity: 'error', code: 'WRONG_FOLDER', at: [parsed.at([])], nearest: closestNames(folder, knownFolders),
        message: `Nothing is read from the folder "${folder}". Expected one of: ${knownFolders.join(', ')}, or region.yaml, lay-words.yaml and word-sets.yaml at the top.`,
      })
      return null
  }
}

const knownFolders = ['checks', 'problems', 'hosts', 'red-flags', 'casebook']

function shapeCheck(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(checkShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'check',
    id: here.text(value.check, ['check']),
    ask: here.text(value.ask, ['ask']),
    how: here.text(value.how, ['how']),
    why: here.text(value.why, ['why']),
    effort: value.effort,
    chief: value.chief ?? false,
    answers: Object.entries(value.answers).map(([label, answer]) => ({
      label: here.key(label, ['answers', label]),
      saidAs: here.texts(answer?.['said as'], ['answers', label, 'said as']),
      redFlag: answer?.['red flag'] === undefined ? null : here.text(answer['red flag'], ['answers', label, 'red flag']),
    })),
    accepts: here.accepts(value.accepts),
  }
}

function shapeProblem(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(problemShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'problem',
    id: here.text(value.problem, ['problem']),
    name: here.text(value.name, ['name']),
    what: here.text(value.what, ['what']),
    agent: value.agent ?? null,
    nature: value.kind,
    hosts: Object.entries(value.hosts).map(([host, how]) => ({ host: here.key(host, ['hosts', host]), how })),
    months: value.season?.months ?? [],
    favouredBy: value['favoured by'] ?? [],
    heatWindow: shapeHeatWindow(value, parsed, report),
    cost: value.cost,
    shows: Object.entries(value.shows).map(([check, answers]) => ({
      check: here.key(check, ['shows', check]),
      answers: Object.entries(answers).map(([label, word]) => ({ label: here.key(label, ['shows', check, label]), word })),
    })),
    sameSign: (value['same sign'] ?? []).map((group, index) => here.texts(group, ['same sign', index])),
    lookAlikes: here.texts(value['look-alikes'], ['look-alikes']),
    advice: {
      bottomLine: here.text(value.advice['bottom line'], ['advice', 'bottom line']),
      doNow: here.texts(value.advice['do now'], ['advice', 'do now']),
      notWorthDoing: here.texts(value.advice['not worth doing'], ['advice', 'not worth doing']),
      nextYear: here.texts(value.advice['next year'], ['advice', 'next year']),
      spray: here.text(value.advice.spray, ['advice', 'spray']),
    },
    cautions: here.texts(value.cautions, ['cautions']),
    watch: value.watch === undefined ? null : {
      at: parsed.keyAt(['watch']),
      escalate: value.watch.escalate === undefined ? null : here.text(value.watch.escalate, ['watch', 'escalate']),
    },
    sources: value.sources === 'common practice' ? [] : value.sources.map(({ title, by, year }) => ({ title, by, year: year ?? null })),
    reviewedOn: here.text(value.reviewed.on, ['reviewed', 'on']),
    accepts: here.accepts(value.accepts),
  }
}

function shapeHeatWindow(
  written: { readonly 'seen between'?: string | undefined; readonly 'seen after'?: string | undefined }, parsed: ParsedFile, report: Report,
): HeatWindow | null {
  const refuse = (key: string, { message, nearest }: HeatFault): null => {
    report({ severity: 'error', code: 'HEAT_WINDOW', at: [parsed.at([key])], message, nearest })
    return null
  }
  const { 'seen between': between, 'seen after': after } = written
  if (between !== undefined && after !== undefined) {
    return refuse('seen after', { message: 'A problem has both "seen between" and "seen after". Expected one of them.', nearest: [] })
  }
  const key = between === undefined ? 'seen after' : 'seen between'
  const text = between ?? after
  if (text === undefined) return null
  const read = readHeatWindow(text, key)
  return 'message' in read ? refuse(key, read) : read
}

function shapeHost(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(hostShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  const target = (written: z.infer<typeof hostShape>['nodes'][string]['answers'][string], path: YamlPath): TargetDraft => {
    const at = parsed.at(path)
    if (written === null) return { kind: 'nowhere', at: parsed.keyAt(path) }
    if (typeof written === 'string') return { kind: 'node', node: written, at }
    if ('problem' in written) return { kind: 'problem', at, problem: here.text(written.problem, [...path, 'problem']) }
    if ('hand over' in written) return { kind: 'hand over', at, because: written['hand over'] }
    return {
      kind: 'host', at, host: here.text(written.host, [...path, 'host']),
      node: written.node === undefined ? null : here.text(written.node, [...path, 'node']),
    }
  }
  const nodes = Object.entries(value.nodes).map(([name, node]): NodeDraft => {
    const path = ['nodes', name]
    const answers = Object.entries(node.answers).map(([label, written]) => ({
      label: here.key(label, [...path, 'answers', label]), target: target(written, [...path, 'answers', label]),
    }))
    return {
      name: here.key(name, path),
      entry: here.texts(node.entry, [...path, 'entry']),
      check: here.text(node.check, [...path, 'check']),
      answers: answers.filter(({ label }) => label.value !== OTHER_ANSWERS),
      otherAnswers: answers.find(({ label }) => label.value === OTHER_ANSWERS)?.target ?? null,
      notSure: node['not sure'] === undefined ? null : target(node['not sure'], [...path, 'not sure']),
    }
  })
  return {
    kind: 'host',
    id: here.text(value.host, ['host']),
    name: value.name,
    called: here.texts(value.called, ['called']),
    start: here.text(value.start, ['start']),
    nodes,
    accepts: here.accepts(value.accepts),
  }
}

function shapeRedFlag(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(redFlagShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'red flag',
    id: here.text(value['red flag'], ['red flag']),
    title: here.text(value.title, ['title']),
    level: value.level,
    setsUsed: value.hear.flatMap((hearing, at) => [
      ...('all of' in hearing ? hearing['all of'].flatMap((group, place) => setsIn(group, ['hear', at, 'all of', place])) : setsIn(hearing.phrases, ['hear', at, 'phrases'])),
      ...(hearing.unless ?? []).flatMap((group, place) => setsIn(group, ['hear', at, 'unless', place])),
    ]).map(({ name, path }) => here.text(name, path)),
    hear: value.hear.map((hearing) => ({
      allOf: 'all of' in hearing ? hearing['all of'] : [],
      within: 'all of' in hearing ? hearing.within ?? DEFAULT_WITHIN_WORDS : DEFAULT_WITHIN_WORDS,
      inOrder: 'all of' in hearing && hearing['in order'] === true,
      reach: hearing['unless reach'] ?? DEFAULT_UNLESS_REACH,
      unless: hearing.unless ?? [],
      phrases: 'phrases' in hearing ? hearing.phrases : [],
    })),
    doNow: here.texts(value.card['do now'], ['card', 'do now']),
    doNot: here.texts(value.card['do not'], ['card', 'do not']),
    call: here.texts(value.card.call, ['card', 'call']),
    then: value.then,
    accepts: here.accepts(value.accepts),
  }
}

function shapeRegion(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(regionShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'region',
    at: parsed.at(['region']),
    id: value.region,
    name: value.name,
    helpline: value.helpline,
    demonstration: value.demonstration ?? false,
    units: value.units,
    language: value.language,
    districts: new Map(Object.entries(value.districts)),
    beside: Object.entries(value.beside ?? {}).map(([district, others]) => ({
      district: here.key(district, ['beside', district]), others: here.texts(others, ['beside', district]),
    })),
    numbers: new Map(Object.entries(value.numbers)),
    onDutyMail: value['on duty mail'] ?? null,
    targets: {
      answerWithinHours: value.targets['answer within hours'],
      urgentWithinHours: value.targets['urgent within hours'],
      eraseContactAfterDays: value.targets['erase contact after days'],
    },
  }
}

function shapeLayWords(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(layWordsShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'lay words',
    at: parsed.keyAt(['alike']),
    alike: value.alike.map((group, index) => here.texts(group, ['alike', index])),
    otherPlants: here.texts(value['other plants'], ['other plants']),
    things: here.texts(value.things, ['things']),
    grounds: here.texts(value.grounds, ['grounds']),
    errands: here.texts(value.errands, ['errands']),
  }
}

function shapeWordSets(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(wordSetsShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  const setsUsed = Object.entries(value).flatMap(([name, words]) => setsIn(words, [name])).map(({ name, path }) => here.text(name, path))
  return { kind: 'word sets', at: parsed.at([]), sets: new Map(Object.entries(value)), setsUsed }
}

function setsIn(group: readonly string[], path: YamlPath): { name: string; path: YamlPath }[] {
  return group.flatMap((word, at) => wordSetsNamed(word).map((name) => ({ name, path: [...path, at] })))
}

function shapeCasebook(parsed: ParsedFile, report: Report): AnyDraft | null {
  const value = fit(casebookShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'casebook',
    cases: value.cases.map((written, index): WorkedCaseDraft => {
      const path = ['cases', index]
      const { ends } = written
      return {
        id: here.text(written.case, [...path, 'case']),
        words: written.words,
        on: written.on,
        district: written.district === undefined ? null : here.text(written.district, [...path, 'district']),
        host: written.host === undefined ? null : here.text(written.host, [...path, 'host']),
        findings: Object.entries(written.findings ?? {}).map(([check, answer]) => ({
          check: here.key(check, [...path, 'findings', check]),
          answer: here.text(answer, [...path, 'findings', check]),
        })),
        ends: 'problem' in ends ? { kind: 'problem', problem: here.text(ends.problem, [...path, 'ends', 'problem']) }
          : 'red flag' in ends ? { kind: 'red flag', redFlag: here.text(ends['red flag'], [...path, 'ends', 'red flag']) }
            : { kind: 'hand over' },
        alsoRight: here.texts(written['also right'], [...path, 'also right']),
      }
    }),
  }
}

function placing(parsed: ParsedFile) {
  const text = (value: string, path: YamlPath): Located<string> => ({ value, at: parsed.at(path) })
  return {
    text,
    key: (value: string, path: YamlPath): Located<string> => ({ value, at: parsed.keyAt(path) }),
    texts: (values: readonly string[] | undefined, path: YamlPath): Located<string>[] =>
      (values ?? []).map((value, index) => text(value, [...path, index])),
    accepts: (values: readonly { warning: string; because: string }[] | undefined): Acceptance[] =>
      (values ?? []).map(({ warning, because }, index) => ({ warning: text(warning, ['accepts', index, 'warning']), because })),
  }
}

function fit<Shape extends z.ZodType>(shape: Shape, parsed: ParsedFile, report: Report): z.infer<Shape> | null {
  const result = shape.safeParse(parsed.values)
  if (result.success) return result.data
  for (const issue of result.error.issues) {
    const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) reportUnknownKey(shape, parsed, [...path, key], report)
      continue
    }
    const found = foundAt(parsed.values, path)
    const where = path.length === 0 ? 'This file' : `"${path.join(' → ')}"`
    const options = issue.code === 'invalid_value' ? issue.values.map(String) : []
    const expected = options.length > 0 ? `one of: ${options.join(', ')}` : expectation(issue)
    const atKey = issue.code === 'invalid_key'
    report({
      severity: 'error', code: 'SHAPE',
      at: [atKey ? parsed.keyAt(path) : parsed.at(path)],
      message: found === undefined
        ? `${where} is missing. Expected ${expected}.`
        : `${where} is ${describe(found)}. Expected ${expected}.`,
      nearest: typeof found === 'string' ? closestNames(found, options) : [],
    })
  }
  return null
}

function reportUnknownKey(shape: z.ZodType, parsed: ParsedFile, path: YamlPath, report: Report): void {
  const key = String(path[path.length - 1])
  const keys = [...keysOf(shape)]
  report({
    severity: 'error', code: 'UNKNOWN_KEY', at: [parsed.keyAt(path)], nearest: closestNames(key, keys),
    message: `The key "${key}" means nothing here. Expected one of the keys in trees/README.md.`,
  })
}

/** All keys that a shape knows at any depth, for suggestions. */
function keysOf(shape: unknown, found = new Set<string>(), seen = new Set<unknown>()): Set<string> {
  if (typeof shape !== 'object' || shape === null || seen.has(shape)) return found
  seen.add(shape)
  const { def } = shape as { def?: Record<string, unknown> }
  if (def === undefined) return found
  for (const [name, part] of Object.entries(def)) {
    if (name === 'shape' && typeof part === 'object' && part !== null) {
      for (const [key, inner] of Object.entries(part)) {
        found.add(key)
        keysOf(inner, found, seen)
      }
    } else if (Array.isArray(part)) {
      for (const inner of part) keysOf(inner, found, seen)
    } else keysOf(part, found, seen)
  }
  return found
}

function expectation(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_key') return issue.issues[0]?.message ?? 'another name'
  if (issue.code === 'invalid_type' && issue.message.startsWith('Invalid input')) {
    return plainTypes[issue.expected] ?? `a ${issue.expected}`
  }
  if (issue.code === 'too_small' && issue.message.startsWith('Too small')) {
    if (issue.origin === 'array') return `at least ${issue.minimum} in the list`
    return `a number ${issue.inclusive === false ? 'above' : 'of at least'} ${issue.minimum}`
  }
  if (issue.code === 'too_big' && issue.message.startsWith('Too big')) {
    return `a number ${issue.inclusive === false ? 'below' : 'of at most'} ${issue.maximum}`
  }
  return issue.message.replace(/^Invalid input: expected /, '')
}

/** What an author calls the types that a shape asks for. */
const plainTypes: Readonly<Record<string, string>> = {
  record: 'keys with values', object: 'keys with values', array: 'a list', string: 'text', int: 'a whole number', boolean: 'true or false',
}

function foundAt(values: unknown, path: YamlPath): unknown {
  let here = values
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined
    here = Object.hasOwn(here, step) ? (here as Record<string | number, unknown>)[step] : undefined
  }
  return here
}

function describe(found: unknown): string {
  if (found === null) return 'empty'
  if (Array.isArray(found)) return found.length === 0 ? 'an empty list' : 'a list'
  if (typeof found === 'object') return 'a group of keys'
  return `"${String(found).slice(0, 60)}"`
}
