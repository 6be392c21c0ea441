import { describe, expect, it } from 'vitest'
import { earlyBar, readCase, withFinding } from '../../src/engine/index.js'
import type { CheckId, Guide } from '../../src/guide/index.js'
import { all, lettuceGuide, swap } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

/** The lettuce world, with a tree that goes on after a bare underside, and the other problems rare or not. */
function askingOn(othersAre = 'rare'): Guide {
  return lettuceGuide({
    'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
    'problems/downy-mildew.yaml': swap('white fuzz: usually, nothing: sometimes', 'white fuzz: almost always, nothing: rarely'),
    'problems/slugs.yaml': swap('lettuce: common', `lettuce: ${othersAre}`),
    'problems/tipburn.yaml': swap('lettuce: common', `lettuce: ${othersAre}`),
  })
}

describe('an answer that does not fit what else was seen', () => {
  const guide = askingOn()
  const odd = lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'nothing']])

  it('is looked at once more, with what most such plants show', () => {
    expect(readCase(guide, odd, MAY_DAY).step).toEqual({
      kind: 'ask', check: 'leaf-underside', by: 'second look',
      again: { said: 'nothing', problem: 'downy-mildew', usual: 'white fuzz' },
    })
  })

  it('is trusted when it is given again', () => {
    const again = { ...odd, findings: withFinding(odd.findings, { check: 'leaf-underside' as CheckId, answer: 'nothing', from: 'asked' }) }
    expect(again.findings.at(-1)).toEqual({ check: 'leaf-underside', answer: 'nothing', from: 'asked', again: true })
    expect(readCase(guide, again, MAY_DAY).step).not.toMatchObject({ by: 'second look', check: 'leaf-underside' })
  })

  it('settles the case when the second look shows the usual sign', () => {
    const mended = { ...odd, findings: withFinding(odd.findings, { check: 'leaf-underside' as CheckId, answer: 'white fuzz', from: 'asked' }) }
    expect(readCase(guide, mended, MAY_DAY).step).toEqual({ kind: 'conclude', problem: 'downy-mildew' })
  })

  it('is not doubted when the asker said it unasked', () => {
    const said = { ...odd, findings: odd.findings.map((finding) => ({ ...finding, from: 'said' as const })) }
    expect(readCase(guide, said, MAY_DAY).step).not.toMatchObject({ by: 'second look' })
  })

  it('is not doubted when something still likely explains it', () => {
    expect(readCase(askingOn('very common'), odd, MAY_DAY).step).not.toMatchObject({ by: 'second look' })
  })

  it('is not doubted where it only says which part of the plant the worry is about', () => {
    const top = lettuceCase([['leaf-underside', 'white fuzz'], ['leaf-top', 'brown edges']])
    expect(readCase(guide, top, MAY_DAY).step).not.toMatchObject({ by: 'second look', check: 'leaf-top' })
  })

  it('is not doubted where the profile does not call it rare', () => {
    const usual = lettuceGuide({
      'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
    })
    expect(readCase(usual, odd, MAY_DAY).step).not.toMatchObject({ by: 'second look' })
  })

  it('is not doubted where it is rarer still with everything else, for then it speaks for the problem', () => {
    // Burning sap: 7.2 % with downy mildew, 1 to 3 % with the others, which show nothing there.
    const burning = lettuceGuide({
      'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
      'problems/downy-mildew.yaml': swap('white fuzz: usually, nothing: sometimes', 'white fuzz: almost always, a burning sap: rarely'),
      'problems/slugs.yaml': swap('nothing: almost always', 'nothing: always'),
      'problems/tipburn.yaml': swap('nothing: almost always', 'nothing: always'),
    })
    const sap = { ...lettuceCase([['leaf-top', 'pale patches'], ['leaf-underside', 'a burning sap']]), carriedOn: true }
    expect(readCase(burning, sap, MAY_DAY).step).not.toMatchObject({ by: 'second look' })
  })

  it('is not doubted where the problem passes even the higher bar all the same', () => {
    // With slime looked for too, the pale patches carry downy mildew over the higher bar whatever the underside showed.
    const sure = lettuceGuide({
      'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
      'problems/downy-mildew.yaml': swap('white fuzz: usually, nothing: sometimes', 'white fuzz: usually, nothing: seldom'),
      'problems/slugs.yaml': all(swap('lettuce: common', 'lettuce: rare'), swap('ragged holes: almost always', 'ragged holes: always')),
      'problems/tipburn.yaml': all(swap('lettuce: common', 'lettuce: rare'), swap('brown edges: almost always', 'brown edges: always')),
    })
    const { step, differential } = readCase(sure, odd, MAY_DAY)
    expect(differential[0]).toMatchObject({ problem: 'downy-mildew' })
    expect(differential[0]?.probability).toBeGreaterThan(earlyBar('ordinary'))
    expect(step).not.toMatchObject({ by: 'second look' })
  })
})
