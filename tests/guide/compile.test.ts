import { describe, expect, it } from 'vitest'
import { compileGuide, printGuideError } from '../../src/guide/index.js'
import { brief, compileLettuce, lettuceFiles, lettuceGuide, swap, TODAY } from './lettuce-world.js'

describe('compiling a guide', () => {
  it('makes one guide of sound files, with names outside and numbers inside', () => {
    const { guide, errors, warnings } = compileLettuce()
    expect(errors).toEqual([])
    expect(warnings).toEqual([])
    expect(guide?.hosts.map(({ id }) => id)).toEqual(['lettuce'])
    expect(guide?.problems.map(({ id }) => id)).toEqual(['downy-mildew', 'slugs', 'tipburn'])
    const lettuce = guide?.hosts[0]
    expect(Array.from(lettuce?.problems ?? [])).toEqual([0, 1, 2])
    expect(Array.from(lettuce?.commonness ?? [])).toEqual([1 / 3, 1 / 3, 1 / 3])
  })

  it('gives the same hash for the same knowledge in another layout and another order of files', () => {
    const plain = lettuceGuide().hash
    const relaid = lettuceFiles({
      'checks/slime.yaml': (text) => `# a comment\n${text.replace('answers: { yes: {}, no: {} }', 'answers:\n  "yes":\n  no: {}')}`,
    }).reverse()
    expect(compileGuide(relaid, { today: TODAY }).guide?.hash).toBe(plain)
  })

  it('gives another hash when the meaning changes', () => {
    const other = lettuceGuide({ 'problems/slugs.yaml': swap('yes: usually', 'yes: very often') }).hash
    expect(other).not.toBe(lettuceGuide().hash)
  })

  it('freezes what it makes', () => {
    const guide = lettuceGuide()
    expect(() => { (guide.hosts[0] as { name: string }).name = 'x' }).toThrow(TypeError)
  })

  it('points at a misspelt node with the right name beside it', () => {
    const { guide, errors } = compileLettuce({ 'hosts/lettuce.yaml': swap('ragged holes: slime', 'ragged holes: slmie') })
    expect(guide).toBeNull()
    expect(brief(errors)).toEqual([{ code: 'UNKNOWN_NODE', at: 'trees/hosts/lettuce.yaml:11:21', nearest: ['slime'] }])
    const [error] = errors
    expect(error && printGuideError(error)).toBe(`trees/hosts/lettuce.yaml:11:21  error UNKNOWN_NODE
  The tree of "lettuce" has no node "slmie". Expected the name of one of its nodes. Did you mean "slime"?
  10 |       pale patches: underside
  11 |       ragged holes: slmie
     |                     ^^^^^`)
  })

  it('reports the mistakes of every file in one run', () => {
    const { errors } = compileLettuce({
      'checks/slime.yaml': swap('effort: hand lens', 'effort: hand lense'),
      'problems/tipburn.yaml': swap('kind: disorder', 'kind: [disorder'),
      'problems/slugs.yaml': swap('cost: ordinary', 'costs: ordinary'),
    })
    const places = brief(errors).map(({ code, at }) => `${code} ${at.split(':')[0] ?? ''}`)
    expect(places).toContain('SHAPE trees/checks/slime.yaml')
    expect(places).toContain('YAML trees/problems/tipburn.yaml')
    expect(places).toContain('UNKNOWN_KEY trees/problems/slugs.yaml')
  })

  it('says that a guide without a region needs one', () => {
    expect(brief(compileLettuce({ 'region.yaml': null }).errors)[0]?.code).toBe('NO_REGION')
  })

  it('gives no guide for no files', () => {
    expect(compileGuide([], { today: TODAY }).guide).toBeNull()
  })
})
