/** One small shared world for the guide tests: lettuce with three problems, two checks, one red flag. */
import { compileGuide, type Compiled, type Guide, type GuideError, type SourceFile } from '../../src/guide/index.js'
import { lineAndColumn } from '../../src/guide/source-file.js'

export const TODAY = '2026-11-25'

const files: Readonly<Record<string, string>> = {
  'trees/region.yaml': `region: larkmoor-valley
name: Larkmoor Valley
helpline: Larkmoor Plant Helpline
demonstration: true
units: metric
language: en
districts: { eastmere: Eastmere, holt-fen: Holt Fen }
numbers:
  emergency: { name: Emergency services, number: "555-0100" }
  poison line: { name: Larkmoor poison line, number: "555-0111" }
targets: { answer within hours: 48, urgent within hours: 4, erase contact after days: 30 }
`,
  'trees/checks/leaf-top.yaml': `check: leaf-top
ask: What do the marks on top look like?
how: Look at three leaves.
why: The edge of a mark tells a lot.
effort: glance
answers:
  pale patches: { said as: [pale patches] }
  ragged holes: { said as: [ragged holes] }
  brown edges: {}
`,
  'trees/checks/leaf-underside.yaml': `check: leaf-underside
ask: What is under the leaf?
how: Turn a leaf over.
why: The mould grows there.
effort: glance
answers:
  white fuzz: { said as: [white fuzz] }
  a burning sap: { red flag: sap-on-skin }
  nothing: {}
`,
  'trees/checks/slime.yaml': `check: slime
ask: Is there slime?
how: Look at dawn.
why: Slugs leave it.
effort: hand lens
answers: { yes: {}, no: {} }
`,
  'trees/problems/downy-mildew.yaml': problem('downy-mildew', 'water mould', `
  leaf-top: { pale patches: almost always }
  leaf-underside: { white fuzz: usually, nothing: sometimes }
  slime: { no: almost always }`),
  'trees/problems/slugs.yaml': problem('slugs', 'mollusc', `
  leaf-top: { ragged holes: almost always }
  leaf-underside: { nothing: almost always }
  slime: { yes: usually, no: sometimes }`),
  'trees/problems/tipburn.yaml': problem('tipburn', 'disorder', `
  leaf-top: { brown edges: almost always }
  leaf-underside: { nothing: almost always }
  slime: { no: almost always }`),
  'trees/red-flags/sap-on-skin.yaml': `red flag: sap-on-skin
title: Sap on the skin
level: emergency
hear:
  - phrases: [sap burned my skin]
card: { do now: [Rinse with cool running water.], call: [poison line] }
then: carry on
sources: common practice
reviewed: { on: 2026-11-25 }
`,
  'trees/hosts/lettuce.yaml': `host: lettuce
name: Lettuce
called: [lettuce, cos]
start: top
nodes:
  top:
    entry: ["something on the leaves"]
    check: leaf-top
    answers:
      pale patches: underside
      ragged holes: slime
      brown edges: { problem: tipburn }
    not sure: underside
  underside:
    entry: ["pale patches on the leaves"]
    check: leaf-underside
    answers:
      white fuzz: { problem: downy-mildew }
      other answers: { hand over: "Pale patches without fuzz need a closer look." }
  slime:
    entry: ["holes in the leaves"]
    check: slime
    answers:
      yes: { problem: slugs }
      no: { hand over: "Holes without slime have many causes." }
`,
  'trees/casebook/lettuce.yaml': `casebook: lettuce
cases:
  - case: lettuce-1
    words: "pale patches on the cos"
    on: 2026-05-14
    district: eastmere
    host: lettuce
    findings: { leaf-top: pale patches, leaf-underside: white fuzz, slime: not sure }
    ends: { problem: downy-mildew }
`,
}

function problem(id: string, kind: string, shows: string): string {
  return `problem: ${id}
name: A ${id}
what: A thing that can be wrong with lettuce.
kind: ${kind}
hosts: { lettuce: common }
cost: ordinary
shows:${shows}
advice:
  bottom line: Pick off the bad leaves.
  do now: [Pick them off today.]
  spray: none
sources: common practice
reviewed: { on: 2026-11-25 }
`
}

/** The lettuce world's files, with some replaced (a string), changed (a function) or taken away (null). */
export function lettuceFiles(changes: Readonly<Record<string, string | null | ((text: string) => string)>> = {}): SourceFile[] {
  const made = new Map(Object.entries(files))
  for (const [path, change] of Object.entries(changes)) {
    const full = path.startsWith('trees/') ? path : `trees/${path}`
    const before = made.get(full)
    if (change === null) made.delete(full)
    else if (typeof change === 'string') made.set(full, change)
    else {
      if (before === undefined) throw new Error(`The lettuce world has no file ${full}.`)
      const after = change(before)
      if (after === before) throw new Error(`The change to ${full} changes nothing: the test would prove nothing.`)
      made.set(full, after)
    }
  }
  return [...made].map(([path, text]) => ({ path, text }))
}

/** The unchanged text of one file of the lettuce world. */
export function lettuceText(path: string): string {
  const text = files[`trees/${path}`]
  if (text === undefined) throw new Error(`The lettuce world has no file ${path}.`)
  return text
}

/** A second host for tests that need one: a rose with no problem of its own, whose tree only hands over. */
export const ROSE = `host: rose
name: Rose
called: [rose]
start: dawn
nodes:
  dawn:
    check: slime
    answers:
      yes: { hand over: "Slime on a rose is odd." }
      no: { hand over: "A rose has many troubles." }
`

/** A check that nothing asks. */
export const SPARE_CHECK = `check: spare
ask: Is the soil damp?
how: Touch it.
why: Dry soil tells.
effort: glance
answers: { damp: {}, dry: {} }
`

/** Replaces one piece of text that must be there. */
export function swap(from: string, to: string): (text: string) => string {
  return (text) => text.replace(from, to)
}

export function compileLettuce(changes: Parameters<typeof lettuceFiles>[0] = {}): Compiled {
  return compileGuide(lettuceFiles(changes), { today: TODAY })
}

/** The compiled lettuce guide. */
export function lettuceGuide(changes: Parameters<typeof lettuceFiles>[0] = {}): Guide {
  const { guide, errors } = compileLettuce(changes)
  if (guide === null) throw new Error(`The lettuce world does not compile: ${errors.map(({ message }) => message).join(' ')}`)
  return guide
}

/** What the compiler reports as errors in the changed lettuce world, in short form. */
export function errorsOf(changes: Parameters<typeof lettuceFiles>[0] = {}) {
  return brief(compileLettuce(changes).errors)
}

/** What the compiler warns of in the changed lettuce world, in short form. Throws on errors, since warnings do not run then. */
export function warningsOf(changes: Parameters<typeof lettuceFiles>[0] = {}) {
  const { errors, warnings } = compileLettuce(changes)
  if (errors.length > 0) throw new Error(`The lettuce world has errors, so warnings did not run: ${errors.map(({ message }) => message).join(' ')}`)
  return brief(warnings)
}

/** A change made of several, one after the other. */
export function all(...changes: readonly ((text: string) => string)[]): (text: string) => string {
  return (text) => changes.reduce((changed, change) => {
    const after = change(changed)
    if (after === changed) throw new Error('One of several changes changes nothing: the test would prove nothing.')
    return after
  }, text)
}

/** Adds lines at the end of a file. */
export function append(lines: string): (text: string) => string {
  return (text) => text + lines
}

/** Errors in the short form that tests compare: code, place and nearest names. */
export function brief(errors: readonly GuideError[]) {
  return errors.map(({ code, at, nearest }) => {
    const { line, column } = lineAndColumn(at[0])
    return { code, at: `${at[0].file.path}:${line}:${column}`, nearest }
  })
}
