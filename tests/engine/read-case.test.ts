import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bars, type Evidence, type Finding, readCase, withFinding } from '../../src/engine/index.js'
import { CANT_LOOK, type CheckId, type Guide, NOT_SURE, type RedFlagId } from '../../src/guide/index.js'
import { lettuceGuide, swap } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

const guide = lettuceGuide()

/** Any findings at all about the lettuce world, at most one a check. */
const findings = fc.uniqueArray(
  fc.constantFrom(...guide.checks).chain((check) => fc.record({
    check: fc.constant(check.id),
    answer: fc.constantFrom(...check.answers.map(({ label }) => label), NOT_SURE, CANT_LOOK),
    from: fc.constantFrom('asked', 'said', 'note', 'photo') as fc.Arbitrary<Finding['from']>,
  })),
  { selector: ({ check }) => check, maxLength: 3 },
)

describe('reading a case', () => {
  it('asks where the plant is not settled', () => {
    expect(readCase(guide, { ...lettuceCase(), start: null }, MAY_DAY).step).toEqual({ kind: 'place' })
  })

  it('asks the first check of the tree', () => {
    expect(readCase(guide, lettuceCase(), MAY_DAY).step).toEqual({ kind: 'ask', check: 'leaf-top', by: 'tree' })
  })

  it('begins at the entry where the complaint starts', () => {
    expect(readCase(guide, lettuceCase([], 'slime'), MAY_DAY).step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
  })

  it('follows the tree in its order and concludes with reasons', () => {
    const reading = readCase(guide, lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'white fuzz']]), MAY_DAY)
    expect(reading.step).toEqual({ kind: 'conclude', problem: 'downy-mildew' })
    expect(reading.path.map(({ node }) => node)).toEqual(['top', 'underside'])
    const [first] = reading.differential
    expect(first?.problem).toBe('downy-mildew')
    expect(first?.reasons.map(({ check, seen }) => [check, seen])).toEqual([['leaf-top', 'almost always'], ['leaf-underside', 'usually']])
    expect(first?.reasons.every(({ weight }) => weight > 0)).toBe(true)
  })

  it('takes the branch for *not sure* where the tree has one', () => {
    expect(readCase(guide, lettuceCase([['leaf-top', NOT_SURE]]), MAY_DAY).step).toEqual({ kind: 'ask', check: 'leaf-underside', by: 'tree' })
  })

  it('treats *can\'t look now* like *not sure*', () => {
    expect(readCase(guide, lettuceCase([['leaf-top', CANT_LOOK]]), MAY_DAY).step).toEqual(readCase(guide, lettuceCase([['leaf-top', NOT_SURE]]), MAY_DAY).step)
  })

  it('picks the most telling check itself where the tree has no branch for *not sure*', () => {
    const { step } = readCase(guide, lettuceCase([['leaf-underside', NOT_SURE]], 'underside'), MAY_DAY)
    expect(step).toEqual({ kind: 'ask', check: 'slime', by: 'gain' })
  })

  it('does not ask by reckoning what every way to the complaint passes over: the complaint has said it', () => {
    const { step } = readCase(guide, lettuceCase([['slime', NOT_SURE]], 'slime'), MAY_DAY)
    expect(step).toEqual({ kind: 'ask', check: 'leaf-underside', by: 'gain' })
    const end = readCase(guide, lettuceCase([['slime', NOT_SURE], ['leaf-underside', NOT_SURE]], 'slime'), MAY_DAY)
    expect(end.step).toMatchObject({ kind: 'hand-over', unsettled: [] })
  })

  it('takes what every way to the complaint passes over as said, and concludes nothing on that alone', () => {
    const share = (start: string | null) => readCase(guide, lettuceCase([], start), MAY_DAY).differential.find(({ problem }) => problem === 'slugs')?.probability ?? 0
    expect(share('slime')).toBeGreaterThan(bars.ordinary)
    expect(share(null)).toBeLessThan(0.5)
    expect(readCase(guide, lettuceCase([['slime', NOT_SURE], ['leaf-underside', NOT_SURE]], 'slime'), MAY_DAY).step.kind).toBe('hand-over')
  })

  it('lets an answer given apart speak for itself against the complaint', () => {
    const share = (findings: Parameters<typeof lettuceCase>[0]) => readCase(guide, lettuceCase(findings, 'slime'), MAY_DAY).differential.find(({ problem }) => problem === 'slugs')?.probability ?? 0
    expect(share([['leaf-top', 'brown edges']])).toBeLessThan(share([]) / 2)
    expect(share([['leaf-top', 'ragged holes']])).toBeGreaterThan(share([]))
  })

  it('hands over with the tree\'s own words at a branch that says so', () => {
    const { step } = readCase(guide, lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'nothing']]), MAY_DAY)
    expect(step).toMatchObject({ kind: 'hand-over', because: 'Pale patches without fuzz need a closer look.' })
  })

  it('hands over rather than guess when nobody could look at anything', () => {
    const { step } = readCase(guide, lettuceCase([['leaf-top', NOT_SURE], ['leaf-underside', NOT_SURE], ['slime', NOT_SURE]]), MAY_DAY)
    expect(step.kind).toBe('hand-over')
  })

  describe('where a check shows the same whatever the cause', () => {
    const alike = lettuceGuide({
      'problems/slugs.yaml': swap('slime: { yes: usually, no: sometimes }', 'slime: { no: almost always }'),
      'hosts/lettuce.yaml': swap('no: { hand over: "Holes without slime have many causes." }', 'no: { problem: tipburn }'),
    })
    const unseen: readonly (readonly [string, string])[] = [['leaf-top', NOT_SURE], ['leaf-underside', NOT_SURE]]

    it('never asks it by reckoning, however little is known', () => {
      expect(readCase(guide, lettuceCase(unseen, 'underside'), MAY_DAY).step).toMatchObject({ kind: 'ask', check: 'slime' })
      expect(readCase(alike, lettuceCase(unseen, 'underside'), MAY_DAY).step.kind).toBe('hand-over')
    })

    it('never asks it by the tree either, unless an answer leads out of the reckoning', () => {
      const holes = lettuceCase([['leaf-top', 'ragged holes']])
      expect(readCase(alike, holes, MAY_DAY).step).not.toMatchObject({ check: 'slime' })
      const handing = lettuceGuide({ 'problems/slugs.yaml': swap('slime: { yes: usually, no: sometimes }', 'slime: { no: almost always }') })
      expect(readCase(handing, holes, MAY_DAY).step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
    })
  })

  it('recomputes everything when an early answer is changed', () => {
    const before = readCase(guide, lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'white fuzz']]), MAY_DAY)
    const changed = lettuceCase([['leaf-top', 'ragged holes'], ['leaf-underside', 'white fuzz']])
    const after = readCase(guide, { ...changed, findings: changed.findings.map((finding) => ({ ...finding, again: true })) }, MAY_DAY)
    expect(before.step.kind).toBe('conclude')
    expect(after.path.map(({ node }) => node)).toEqual(['top'])
    expect(after.step).toMatchObject({ kind: 'ask', check: 'slime' })
  })

  it('never asks what was already said', () => {
    const said: Evidence = { ...lettuceCase(), findings: [{ check: 'leaf-top' as CheckId, answer: 'ragged holes', from: 'said' }] }
    expect(readCase(guide, said, MAY_DAY).step).toEqual({ kind: 'ask', check: 'slime', by: 'tree' })
  })

  it('ignores a finding about a check that the guide no longer has', () => {
    const gone = lettuceCase([['a-check-that-was', 'yes']])
    expect(readCase(guide, gone, MAY_DAY).step).toEqual(readCase(guide, lettuceCase(), MAY_DAY).step)
  })

  it('starts at the top of the tree when the entry is no longer there', () => {
    expect(readCase(guide, lettuceCase([], 'a-node-that-was'), MAY_DAY).step).toEqual({ kind: 'ask', check: 'leaf-top', by: 'tree' })
  })

  it('moves to another host\'s tree where an answer leads there, and weighs that host\'s problems', () => {
    const two = lettuceGuide({
      'hosts/some-plant.yaml': `host: some-plant
name: Some plant
called: [some plant]
start: top
nodes:
  top:
    check: slime
    answers: { yes: { host: lettuce }, no: { hand over: "Not known." } }
`,
    })
    const evidence = { ...lettuceCase([['slime', 'yes']]), start: { host: 'some-plant', node: null } } as unknown as Evidence
    const reading = readCase(two, evidence, MAY_DAY)
    expect(reading.host).toBe('lettuce')
    expect(reading.step).toEqual({ kind: 'ask', check: 'leaf-top', by: 'tree' })
    expect(reading.differential[0]?.problem).toBe('slugs')
  })
})

describe('red flags in a case', () => {
  const flagged: Evidence = { ...lettuceCase(), redFlags: ['sap-on-skin' as RedFlagId] }

  it('stop the questions until the asker goes on', () => {
    expect(readCase(guide, flagged, MAY_DAY)).toMatchObject({ step: { kind: 'red-flag' }, cards: ['sap-on-skin'] })
  })

  it('stay on the case after the asker has gone on', () => {
    const reading = readCase(guide, { ...flagged, carriedOn: true }, MAY_DAY)
    expect(reading.step.kind).toBe('ask')
    expect(reading.cards).toEqual(['sap-on-skin'])
  })

  it('are raised by an answer as well as by words', () => {
    const reading = readCase(guide, lettuceCase([['leaf-underside', 'a burning sap']], 'underside'), MAY_DAY)
    expect(reading).toMatchObject({ step: { kind: 'red-flag' }, cards: ['sap-on-skin'] })
  })

  it('of the kind that ends a case cannot be gone past', () => {
    const stopping = lettuceGuide({ 'red-flags/sap-on-skin.yaml': swap('then: carry on', 'then: stop') })
    expect(readCase(stopping, { ...flagged, carriedOn: true }, MAY_DAY).step).toEqual({ kind: 'red-flag' })
  })

  it('of level caution do not stop the questions', () => {
    const gentle = lettuceGuide({ 'red-flags/sap-on-skin.yaml': swap('level: emergency', 'level: caution') })
    expect(readCase(gentle, flagged, MAY_DAY)).toMatchObject({ step: { kind: 'ask' }, cards: ['sap-on-skin'] })
  })
})

describe('any case at all', () => {
  it('gives probabilities that sum to one', () => {
    fc.assert(fc.property(findings, (some) => {
      const { differential } = readCase(guide, { ...lettuceCase(), findings: some }, MAY_DAY)
      expect(differential.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12)
    }))
  })

  it('reads the same whatever the order of its findings', () => {
    fc.assert(fc.property(findings.chain((some) => fc.tuple(fc.constant(some), fc.shuffledSubarray(some, { minLength: some.length }))), ([one, other]) => {
      expect(readCase(guide, { ...lettuceCase(), findings: other }, MAY_DAY)).toEqual(readCase(guide, { ...lettuceCase(), findings: one }, MAY_DAY))
    }))
  })

  it('reads the same after it was saved as JSON and loaded', () => {
    fc.assert(fc.property(findings, (some) => {
      const evidence = { ...lettuceCase(), findings: some }
      expect(readCase(guide, JSON.parse(JSON.stringify(evidence)) as Evidence, MAY_DAY)).toEqual(readCase(guide, evidence, MAY_DAY))
    }))
  })

  it('is not moved by *not sure*', () => {
    fc.assert(fc.property(findings, (some) => {
      const told = some.filter(({ answer }) => answer !== NOT_SURE && answer !== CANT_LOOK)
      const all = readCase(guide, { ...lettuceCase(), findings: some }, MAY_DAY).differential
      expect(all).toEqual(readCase(guide, { ...lettuceCase(), findings: told }, MAY_DAY).differential)
    }))
  })

  it('never asks a check that has an answer, but for one second look', () => {
    fc.assert(fc.property(findings, (some) => {
      const { step } = readCase(guide, { ...lettuceCase(), findings: some }, MAY_DAY)
      if (step.kind !== 'ask') return
      const before = some.find(({ check }) => check === step.check)
      if (step.by === 'second look') expect((before as Finding | undefined)?.again).not.toBe(true)
      else expect(before).toBeUndefined()
    }))
  })
})

/** Follows every answer of every check from a start, and gives the number of checks of the longest case. */
export function longestCase(world: Guide, evidence: Evidence, asked = 0): number {
  if (asked > 20) throw new Error('The engine does not end.')
  const { step } = readCase(world, evidence, MAY_DAY)
  if (step.kind !== 'ask') return asked
  const check = world.checks[world.checkNumbers.get(step.check) ?? -1]
  const answers = [...(check?.answers.map(({ label }) => label) ?? []), NOT_SURE]
  return Math.max(...answers.map((answer) =>
    longestCase(world, { ...evidence, carriedOn: true, findings: withFinding(evidence.findings, { check: step.check, answer, from: 'asked' }) }, asked + 1)))
}

describe('every path', () => {
  it('ends in a conclusion or a hand-over within the checks there are', () => {
    for (const node of guide.hosts[0]?.nodes ?? []) {
      expect(longestCase(guide, lettuceCase([], node.name))).toBeLessThanOrEqual(guide.checks.length + 2)
    }
  })
})
