import type { z } from 'zod'
import type { AnyDraft } from './any-draft.js'
import { closestNames } from './closest-names.js'
import { type NodeDraft, OTHER_ANSWERS, type TargetDraft, type WorkedCaseDraft } from './drafts.js'
import { fit, placing } from './fit-shape.js'
import type { HeatWindow } from './guide.js'
import { type HeatFault, readHeatWindow } from './heat-window.js'
import type { ParsedFile, Report, YamlPath } from './parse.js'
import { shapeHearings } from './shape-hearings.js'
import { languageOfFile } from './translation/file-language.js'
import { shapeLanguageFile } from './translation/shape-translation.js'
import { shapeLayWords, shapeWordSets } from './shape-words.js'
import { casebookShape, checkShape, hostShape, problemShape, redFlagShape, regionShape } from './yaml-shapes.js'

/**
 * Turns one parsed file into a typed draft, by the folder it stands in. What does not fit is reported with its place
 * and what was expected; then null comes back.
 */
export function shapeFile(parsed: ParsedFile, report: Report): AnyDraft | null {
  const folders = parsed.file.path.split('/')
  const folder = folders[folders.length - 2] ?? ''
  const name = folders[folders.length - 1] ?? ''
  // The casebook's files may have any name; a case there says its own language.
  const inLanguage = folder === 'casebook' ? null : languageOfFile(name)
  if (inLanguage !== null) return shapeLanguageFile(parsed, { folder, ...inLanguage }, report)
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
    ...shapeHearings(value.hear, here),
    doNow: here.texts(value.card['do now'], ['card', 'do now']),
    doNot: here.texts(value.card['do not'], ['card', 'do not']),
    call: here.texts(value.card.call, ['card', 'call']),
    then: value.then,
    afterwards: value.afterwards === undefined ? null : {
      host: here.text(value.afterwards.host, ['afterwards', 'host']),
      node: here.text(value.afterwards.node, ['afterwards', 'node']),
      offer: here.text(value.afterwards.offer, ['afterwards', 'offer']),
    },
    looking: value.looking === undefined ? null : here.text(value.looking, ['looking']),
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
    leastPublicCount: value['least public count'] ?? USUAL_LEAST_COUNT,
    onDutyMail: value['on duty mail'] ?? null,
    targets: {
      answerWithinHours: value.targets['answer within hours'],
      urgentWithinHours: value.targets['urgent within hours'],
      eraseContactAfterDays: value.targets['erase contact after days'],
    },
  }
}

/** Counts under five are commonly held back from public tables of small areas (common practice of statistics offices). */
const USUAL_LEAST_COUNT = 5

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
