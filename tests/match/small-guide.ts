import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { compileGuide, type Guide, printGuideError, type SourceFile } from '../../src/guide/index.js'
import { readFolder } from '../../src/guide/read-folder.js'

const TODAY = '2026-11-25'
const TREES = join(import.meta.dirname, '../../trees')

/** The real red flags and region, with no plants: what the red-flag tests listen with. */
export async function redFlagGuide(): Promise<Guide> {
  return compiled([...(await redFlagFiles()), await regionFile(), ...(await wordSets())])
}

/** The real red flags, without the places that they lead to in trees that a small guide does not have. */
async function redFlagFiles(): Promise<readonly SourceFile[]> {
  return (await readFolder(join(TREES, 'red-flags'))).map((one) => ({ ...one, text: one.text.replace(/^afterwards:(?: \{.*\n|\n(?: {2}.*\n)+)/mu, '') }))
}

/** Five hosts, six problems and the red flags of the real guide, small enough to reckon by hand. */
export async function smallGuide(): Promise<Guide> {
  return compiled([
    ...(await redFlagFiles()),
    await regionFile(),
    ...(await wordSets()),
    file('lay-words.yaml', LAY_WORDS),
    ...Object.entries(CHECKS).map(([id, answers]) => file(`checks/${id}.yaml`, `
check: ${id}
ask: What do you see?
how: Look at it.
why: It tells.
effort: glance
answers: { ${answers.map((answer) => `${answer}: {}`).join(', ')} }
`)),
    ...Object.entries(PROBLEMS).map(([id, { hosts, shows }]) => file(`problems/${id}.yaml`, `
problem: ${id}
name: ${id}
what: A thing that can be wrong.
kind: fungus
hosts: { ${hosts.map((host) => `${host}: common`).join(', ')} }
cost: ordinary
shows: { ${shows} }
advice: { bottom line: Leave it alone., do now: [Wait.], spray: none }
sources: common practice
reviewed: { on: 2026-11-25 }
`)),
    ...Object.entries(HOSTS).map(([id, text]) => file(`hosts/${id}.yaml`, `host: ${id}\n${text}`)),
  ])
}

/** The whole guide of this checkout. */
export async function wholeGuide(): Promise<Guide> {
  return compiled(await readFolder(TREES))
}

function compiled(files: readonly SourceFile[]): Guide {
  const { guide, errors } = compileGuide(files, { today: TODAY })
  if (guide === null) throw new Error(errors.map((error) => printGuideError(error)).join('\n'))
  return guide
}

async function wordSets(): Promise<readonly SourceFile[]> {
  return [file('word-sets.yaml', await readFile(join(TREES, 'word-sets.yaml'), 'utf8'))]
}

async function regionFile(): Promise<SourceFile> {
  return file('region.yaml', await readFile(join(TREES, 'region.yaml'), 'utf8'))
}

function file(path: string, text: string): SourceFile {
  return { path: `trees/${path}`, text }
}

const LAY_WORDS = `
alike: [[bug, insect, critter], [fluff, cotton wool, fuzz], [chew, eat, munch]]
other plants: [courgette, rose of sharon]
things: [stakes, bed]
grounds: []
errands: [opening hours]
`

const CHECKS = {
  'leaf-marks': ['spots', 'white powder', 'holes'],
  'fruit-marks': ['scabs', 'sunken bottom'],
}

const PROBLEMS: Record<string, { hosts: readonly string[]; shows: string }> = {
  mildew: { hosts: ['lettuce', 'rose', 'apple'], shows: 'leaf-marks: { white powder: usually }' },
  'leaf-spot': { hosts: ['tomato', 'rose'], shows: 'leaf-marks: { spots: usually }' },
  slugs: { hosts: ['lettuce', 'unknown-plant'], shows: 'leaf-marks: { holes: usually }' },
  'dry-bottom': { hosts: ['tomato'], shows: 'fruit-marks: { sunken bottom: usually }' },
  scab: { hosts: ['apple'], shows: 'fruit-marks: { scabs: usually }' },
  'bean-rust': { hosts: ['sweet-corn', 'unknown-plant'], shows: 'leaf-marks: { spots: usually }' },
}

const HOSTS = {
  lettuce: `
name: Lettuce
called: [lettuce, salad leaves, cos]
start: leaves
nodes:
  leaves:
    entry: [white powder on the leaves, holes in the leaves, leaves chewed in the night]
    check: leaf-marks
    answers: { white powder: { problem: mildew }, holes: { problem: slugs }, other answers: { hand over: Not known. } }
`,
  tomato: `
name: Tomato
called: [tomato, cherry tomato, tomatoes]
start: leaves
nodes:
  leaves:
    entry: [brown spots on the leaves, yellow leaves at the bottom]
    check: leaf-marks
    answers: { spots: { problem: leaf-spot }, other answers: fruit }
  fruit:
    entry: [black sunken bottom on the fruit, bottom end of the fruit is rotten]
    check: fruit-marks
    answers: { sunken bottom: { problem: dry-bottom }, other answers: { hand over: Not known. } }
`,
  apple: `
name: Apple
called: [apple, apple tree, Malus domestica]
start: fruit
nodes:
  fruit:
    entry: [corky scabs on the fruit, rough brown patches on the apples]
    check: fruit-marks
    answers: { scabs: { problem: scab }, other answers: leaves }
  leaves:
    entry: [white powder on the shoots, shoots white and stunted]
    check: leaf-marks
    answers: { white powder: { problem: mildew }, other answers: { hand over: Not known. } }
`,
  rose: `
name: Rose
called: [rose, climbing rose, rambler]
start: leaves
nodes:
  leaves:
    entry: [black spots on the leaves, leaves drop with black spots, white powder on the buds]
    check: leaf-marks
    answers: { spots: { problem: leaf-spot }, white powder: { problem: mildew }, other answers: { hand over: Not known. } }
`,
  'sweet-corn': `
name: Sweet corn
called: [sweet corn, corn on the cob, maïs]
start: leaves
nodes:
  leaves:
    entry: [rusty bumps on the leaves]
    check: leaf-marks
    answers: { spots: { problem: bean-rust }, other answers: { hand over: Not known. } }
`,
  'unknown-plant': `
name: Unknown plant
called: [plant, bush, shrub, tree]
start: leaves
nodes:
  leaves:
    entry: [holes in the leaves, rusty bumps on the leaves]
    check: leaf-marks
    answers: { holes: { problem: slugs }, spots: { problem: bean-rust }, other answers: { host: lettuce } }
`,
}
