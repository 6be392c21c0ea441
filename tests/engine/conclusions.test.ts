import { describe, expect, it } from 'vitest'
import { bars, earlyBar, readCase, withFinding } from '../../src/engine/index.js'
import { type CheckId, type Guide, NOT_SURE } from '../../src/guide/index.js'
import { all, lettuceGuide, swap } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

/** One telling answer and nothing more: slugs at about 85 %. */
const holesOnly: readonly (readonly [string, string])[] = [['leaf-top', 'ragged holes'], ['slime', NOT_SURE], ['leaf-underside', NOT_SURE]]

/** Answers that make slugs likely and no more: two of three speak for them. */
const halfSure: readonly (readonly [string, string])[] = [['leaf-top', 'ragged holes'], ['slime', 'no']]

function costing(cost: string): Guide {
  if (cost === 'ordinary') return lettuceGuide()
  const watch = cost === 'regulated' ? '\nwatch: { escalate: "Take a photo and tell the office the place and the date." }' : ''
  return lettuceGuide({ 'problems/slugs.yaml': swap('cost: ordinary', `cost: ${cost}${watch}`) })
}

describe('the bar for a conclusion', () => {
  it('rises with the cost of being wrong', () => {
    expect(bars.ordinary).toBeLessThan(bars.costly)
    expect(bars.costly).toBeLessThan(bars.regulated)
    expect(bars.regulated).toBeLessThanOrEqual(bars.dangerous)
  })

  it('is higher before the tree has ended than at its end', () => {
    for (const cost of ['ordinary', 'costly', 'regulated', 'dangerous'] as const) {
      expect(earlyBar(cost)).toBeGreaterThan(bars[cost])
      expect(earlyBar(cost)).toBeLessThan(1)
    }
  })

  it('lets the same evidence conclude an ordinary problem and hand over a regulated one', () => {
    const evidence = lettuceCase(holesOnly)
    const ordinary = readCase(costing('ordinary'), evidence, MAY_DAY)
    const regulated = readCase(costing('regulated'), evidence, MAY_DAY)
    expect(ordinary.differential[0]?.probability).toBeGreaterThan(bars.ordinary)
    expect(ordinary.differential[0]?.probability).toBeLessThan(bars.regulated)
    expect(ordinary.step).toEqual({ kind: 'conclude', problem: 'slugs' })
    expect(regulated.step.kind).toBe('hand-over')
  })
})

describe('an early conclusion', () => {
  /** Slugs all but certain from two answers, while the tree would still ask about slime. */
  const early = (cost: string): Guide => {
    const watch = cost === 'regulated' ? '\nwatch: { escalate: "Take a photo and tell the office the place and the date." }' : ''
    return lettuceGuide({
      'problems/slugs.yaml': all((text) => text.replace('cost: ordinary', `cost: ${cost}${watch} # as costly as that`), swap('ragged holes: almost always', 'ragged holes: always'), swap('nothing: almost always', 'a burning sap: always')),
      'problems/tipburn.yaml': all(swap('brown edges: almost always', 'brown edges: always'), swap('nothing: almost always', 'nothing: always')),
      'problems/downy-mildew.yaml': all(swap('pale patches: almost always', 'pale patches: always'), swap('white fuzz: usually, nothing: sometimes', 'white fuzz: always')),
    })
  }
  const telling: readonly (readonly [string, string])[] = [['leaf-top', 'ragged holes'], ['leaf-underside', 'a burning sap']]
  const stepOf = (guide: Guide) => readCase(guide, { ...lettuceCase(telling), carriedOn: true }, MAY_DAY)

  it('spares the asker the rest of the tree where little hangs on it', () => {
    expect(stepOf(early('ordinary')).step).toEqual({ kind: 'conclude', problem: 'slugs' })
  })

  it('waits for a check with a hand-over of its own where being wrong is costly', () => {
    const { step, differential } = stepOf(early('regulated'))
    expect(differential[0]?.probability).toBeGreaterThan(earlyBar('regulated'))
    expect(step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
  })

  it('is never drawn by a tree that leads on to other plants, which knows too little of any', () => {
    const any = lettuceGuide({
      'problems/slugs.yaml': all(swap('lettuce: common', 'lettuce: common, some-plant: common'), swap('ragged holes: almost always', 'ragged holes: always')),
      'hosts/some-plant.yaml': `host: some-plant
name: Some plant
called: [some plant]
start: top
nodes:
  top: { check: leaf-top, answers: { ragged holes: slime, other answers: { host: lettuce } } }
  slime: { check: slime, answers: { yes: { problem: slugs }, no: { hand over: "Not known." } } }
`,
    })
    const start = { host: 'some-plant', node: null } as unknown as ReturnType<typeof lettuceCase>['start']
    const { step, differential } = readCase(any, { ...lettuceCase([['leaf-top', 'ragged holes'], ['leaf-underside', 'nothing']]), start }, MAY_DAY)
    expect(differential.find(({ problem }) => problem === null)?.probability).toBeGreaterThan(0.15)
    expect(step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
  })
})

describe('what goes with an ending', () => {
  it('names a watch problem that is not concluded but cannot be passed over', () => {
    const reading = readCase(costing('regulated'), lettuceCase(holesOnly), MAY_DAY)
    expect(reading.watched).toEqual(['slugs'])
  })

  it('does not name it while checks are still being asked', () => {
    expect(readCase(costing('regulated'), lettuceCase(), MAY_DAY).watched).toEqual([])
  })

  /** Brown edges mean tipburn, mostly; downy mildew shows them too, as often as `browned` says. */
  const browning = (browned: string, more: Parameters<typeof lettuceGuide>[0] = {}): Guide => lettuceGuide({
    ...more,
    'problems/downy-mildew.yaml': swap('pale patches: almost always', `pale patches: sometimes, brown edges: ${browned}`),
    'problems/tipburn.yaml': all(swap('nothing: almost always', 'nothing: always'), swap('lettuce: common', 'lettuce: very common')),
  })
  const brown: readonly (readonly [string, string])[] = [['leaf-top', 'brown edges']]

  it('says which answer not yet given would change the conclusion', () => {
    // A look that takes more than a moment is not asked to confirm what is likely; it is told of.
    const guide = browning('as often as not', { 'checks/leaf-underside.yaml': swap('effort: glance', 'effort: dig') })
    const { step, turns } = readCase(guide, lettuceCase(brown), MAY_DAY)
    expect(step).toEqual({ kind: 'conclude', problem: 'tipburn' })
    expect(turns).toContainEqual({ check: 'leaf-underside', answer: 'white fuzz', to: 'downy-mildew' })
    for (const { check, answer, to } of turns) {
      expect(readCase(guide, lettuceCase([...brown, [check, answer]]), MAY_DAY).differential[0]?.problem ?? null).toBe(to)
    }
  })

  it('names no answer that is not to be expected, and none at all where none would turn it', () => {
    // White fuzz would still turn it, but with downy mildew this unlikely hardly anyone would find it.
    const { step, turns } = readCase(browning('rarely'), lettuceCase(brown), MAY_DAY)
    expect(step).toEqual({ kind: 'conclude', problem: 'tipburn' })
    expect(turns).toEqual([])
  })

  it('offers a sample for the laboratory, which is never asked on the spot', () => {
    const guide = lettuceGuide({
      'checks/lab.yaml': `check: lab
ask: What did the laboratory find?
how: Wrap it in dry paper.
why: It can grow what no eye sees.
effort: send a sample
answers: { mould: {}, nothing: {} }
`,
      'problems/downy-mildew.yaml': (text) => text.replace('shows:', 'shows:\n  lab: { mould: almost always }'),
      'problems/tipburn.yaml': (text) => text.replace('shows:', 'shows:\n  lab: { nothing: almost always }'),
    })
    const unsure = lettuceCase([['leaf-top', NOT_SURE], ['leaf-underside', NOT_SURE], ['slime', NOT_SURE]])
    expect(readCase(guide, unsure, MAY_DAY).step).toMatchObject({ kind: 'hand-over', sample: 'lab' })
    expect(readCase(lettuceGuide(), unsure, MAY_DAY).step).toMatchObject({ kind: 'hand-over', sample: null })
  })
})

describe('an entry that was taken wrongly', () => {
  const guide = lettuceGuide()

  it('goes back to the top of the tree before it hands over by a branch for all other answers', () => {
    expect(readCase(guide, lettuceCase([['leaf-underside', 'nothing']], 'underside'), MAY_DAY).step).toEqual({ kind: 'ask', check: 'leaf-top', by: 'tree' })
  })

  it('hands over at once where the words were written for that one answer, since they may hold a warning', () => {
    expect(readCase(guide, lettuceCase([['slime', 'no']], 'slime'), MAY_DAY).step).toMatchObject({ kind: 'hand-over', because: 'Holes without slime have many causes.' })
  })

  it('hands over at once where the words were written for *not sure*', () => {
    const warning = lettuceGuide({ 'hosts/lettuce.yaml': swap('      other answers: { hand over: "Pale patches without fuzz need a closer look." }', '      other answers: { hand over: "Keep away from it." }\n    not sure: { hand over: "Keep away from it." }') })
    expect(readCase(warning, lettuceCase([['leaf-underside', NOT_SURE]], 'underside'), MAY_DAY).step).toMatchObject({ kind: 'hand-over', because: 'Keep away from it.' })
  })

  it('hands over when the way from the top ends there too', () => {
    const { step } = readCase(guide, lettuceCase([['slime', 'no'], ['leaf-top', 'ragged holes']], 'slime'), MAY_DAY)
    expect(step).toMatchObject({ kind: 'hand-over', because: 'Holes without slime have many causes.' })
  })

  it('makes problems that it cannot lead to less likely, but not impossible', () => {
    const top = readCase(guide, lettuceCase(), MAY_DAY).differential
    const entry = readCase(guide, lettuceCase([], 'slime'), MAY_DAY).differential
    const share = (list: typeof top, problem: string): number => list.find((one) => one.problem === problem)?.probability ?? 0
    expect(share(entry, 'slugs')).toBeGreaterThan(share(top, 'slugs'))
    expect(share(entry, 'tipburn')).toBeGreaterThan(0.02)
  })

  it('still asks its own first check, which may be there for safety', () => {
    const sure = lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'white fuzz']], 'slime')
    expect(readCase(guide, sure, MAY_DAY).step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
  })
})

describe('a case that goes on and on', () => {
  it('ends after twelve checks, second looks counted', () => {
    let evidence = lettuceCase(halfSure)
    for (let turn = 0; turn < 12; turn++) {
      const { step } = readCase(lettuceGuide(), evidence, MAY_DAY)
      if (step.kind !== 'ask') break
      evidence = { ...evidence, findings: withFinding(evidence.findings, { check: step.check as CheckId, answer: NOT_SURE, from: 'asked' }) }
    }
    expect(readCase(lettuceGuide(), evidence, MAY_DAY).step.kind).not.toBe('ask')
  })
})
