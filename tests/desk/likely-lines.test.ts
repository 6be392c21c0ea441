import { describe, expect, it } from 'vitest'
import { likelyLine } from '../../src/desk/index.js'
import { readCase } from '../../src/engine/index.js'
import { lettuceCase, MAY_DAY } from '../engine/lettuce-case.js'
import { all, lettuceGuide, swap } from '../guide/lettuce-world.js'

const linesOf = (guide: ReturnType<typeof lettuceGuide>, problem: string, findings: Parameters<typeof lettuceCase>[0]) => {
  const likely = readCase(guide, lettuceCase(findings), MAY_DAY).differential.find((one) => one.problem === problem)
  if (likely === undefined) throw new Error(`The differential holds no ${problem}.`)
  return likelyLine(guide, likely)
}

describe('the lines of a likely problem', () => {
  it('list a usual sign for it with how often it is seen', () => {
    const line = linesOf(lettuceGuide(), 'downy-mildew', [['leaf-underside', 'white fuzz']])
    expect(line.for).toMatchObject([{ check: 'leaf-underside', answer: 'white fuzz', seen: 'usually' }])
    expect(line.against).toEqual([])
  })

  it('never say seldom of what speaks for it', () => {
    // Seldom with slugs, and next to never with the others: it speaks for slugs, but not by being usual.
    const guide = lettuceGuide({
      'problems/slugs.yaml': swap('nothing: almost always', 'nothing: very often, a burning sap: seldom'),
      'problems/downy-mildew.yaml': swap('white fuzz: usually, nothing: sometimes', 'white fuzz: almost always, a burning sap: never'),
      'problems/tipburn.yaml': swap('nothing: almost always', 'nothing: always'),
    })
    expect(linesOf(guide, 'slugs', [['leaf-underside', 'a burning sap']]).for).toMatchObject([{ answer: 'a burning sap', seen: null }])
  })

  it('do not call usual what speaks against it', () => {
    const guide = lettuceGuide({
      'problems/slugs.yaml': swap('nothing: almost always', 'nothing: as often as not, white fuzz: as often as not'),
      'problems/downy-mildew.yaml': swap('white fuzz: usually, nothing: sometimes', 'white fuzz: always'),
      'problems/tipburn.yaml': swap('nothing: almost always', 'white fuzz: almost always'),
    })
    const { against } = linesOf(guide, 'slugs', [['leaf-underside', 'white fuzz']])
    expect(against).toMatchObject([{ answer: 'white fuzz', seen: null }])
  })

  it('leave out what says next to nothing either way', () => {
    const guide = lettuceGuide({
      'problems/slugs.yaml': all(swap('yes: usually', 'yes: sometimes'), swap('no: sometimes', 'no: usually')),
      'problems/downy-mildew.yaml': swap('no: almost always', 'no: usually, yes: sometimes'),
      'problems/tipburn.yaml': swap('no: almost always', 'no: usually, yes: sometimes'),
    })
    expect(linesOf(guide, 'slugs', [['slime', 'no']])).toMatchObject({ for: [], against: [] })
  })
})
