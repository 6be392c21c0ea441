import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { append, compileLettuce, ROSE, warningsOf } from '../lettuce-world.js'

/** Gives a profile the signs of slugs. */
const likeSlugs = (text: string) => text.replace(/shows:[^]*?advice:/, `shows:
  leaf-top: { ragged holes: almost always }
  leaf-underside: { nothing: almost always }
  slime: { yes: usually, no: sometimes }
advice:`)

describe('rule: problems can be told apart', () => {
  it('accepts problems that one check tells apart', () => {
    expect(warningsOf()).toEqual([])
  })

  it('tells problems apart by a check that only one profile mentions', () => {
    expect(warningsOf({ 'problems/tipburn.yaml': (text) => likeSlugs(text).replace('  leaf-top: { ragged holes: almost always }\n', '') })).toEqual([])
  })

  it('points at both of two problems with the same signs', () => {
    const { errors, warnings } = compileLettuce({ 'problems/tipburn.yaml': likeSlugs })
    expect(errors).toEqual([])
    expect(warnings.map(({ code, at }) => [code, ...at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))])).toEqual([
      ['ALIKE_PROBLEMS', { file: 'trees/problems/slugs.yaml', line: 1, column: 10 }, { file: 'trees/problems/tipburn.yaml', line: 1, column: 10 }],
    ])
  })

  it('does not let a word that is hardly rarer tell two problems apart', () => {
    expect(warningsOf({ 'problems/tipburn.yaml': (text) => likeSlugs(text).replace('yes: usually', 'yes: often') }).map(({ code }) => code)).toEqual(['ALIKE_PROBLEMS'])
  })

  it('reports every pair, and a pair once though it shares two hosts', () => {
    const onRoses = (text: string) => text.replace('lettuce: common', 'lettuce: common, rose: rare')
    expect(warningsOf({
      'hosts/rose.yaml': ROSE.replace('yes: { hand over: "Slime on a rose is odd." }', 'yes: { problem: slugs }')
        .replace('no: { hand over: "A rose has many troubles." }', 'no: { problem: tipburn }'),
      'problems/slugs.yaml': onRoses, 'problems/downy-mildew.yaml': likeSlugs, 'problems/tipburn.yaml': (text) => onRoses(likeSlugs(text)),
    }).map(({ at }) => at)).toEqual(['trees/problems/downy-mildew.yaml:1:10', 'trees/problems/downy-mildew.yaml:1:10', 'trees/problems/slugs.yaml:1:10'])
  })

  it('is silent where the first problem accepts it with a reason', () => {
    expect(warningsOf({
      'problems/tipburn.yaml': likeSlugs,
      'problems/slugs.yaml': append('accepts: [{ warning: ALIKE_PROBLEMS, because: only the laboratory can tell }]\n'),
    })).toEqual([])
  })

  it('is not silenced by accepting another warning', () => {
    expect(warningsOf({
      'problems/tipburn.yaml': likeSlugs, 'problems/slugs.yaml': append('accepts: [{ warning: OLD_REVIEW, because: nobody had time }]\n'),
    })).toHaveLength(1)
  })
})
