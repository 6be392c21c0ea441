import { describe, expect, it } from 'vitest'
import { lineAndColumn } from '../../../src/guide/source-file.js'
import { append, compileLettuce, ROSE, swap, warningsOf } from '../lettuce-world.js'

const entries = (...phrases: string[]) => swap('entry: ["holes in the leaves"]', `entry: [${phrases.map((phrase) => JSON.stringify(phrase)).join(', ')}]`)

describe('rule: entry phrases are not shadowed', () => {
  it('accepts the host\'s own name in a phrase', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': entries('holes in my lettuce') })).toEqual([])
  })

  it('accepts the same phrase in two trees', () => {
    expect(warningsOf({ 'hosts/rose.yaml': ROSE.replace('    check:', '    entry: ["holes in the leaves"]\n    check:') })).toEqual([])
  })

  it('accepts another host\'s name as part of a longer word', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': entries('roseate spots'), 'hosts/rose.yaml': ROSE })).toEqual([])
  })

  it('lets the names of the unknown plant take no phrase', () => {
    const unknown = ROSE.replace('host: rose', 'host: unknown-plant').replace('[rose]', '[bush]')
    expect(warningsOf({ 'hosts/lettuce.yaml': entries('looks like a bush'), 'hosts/unknown-plant.yaml': unknown })).toEqual([])
    expect(warningsOf({ 'hosts/lettuce.yaml': entries('looks like a bush'), 'hosts/rose.yaml': ROSE.replace('[rose]', '[bush]') })).toHaveLength(1)
  })

  it('points at both places of a phrase that stands twice in one tree, whatever its capitals and marks', () => {
    const { warnings } = compileLettuce({ 'hosts/lettuce.yaml': entries('Something on the leaves!') })
    expect(warnings.map(({ code, at }) => [code, ...at.map(lineAndColumn)])).toEqual([
      ['SHADOWED_ENTRY', { line: 21, column: 13 }, { line: 7, column: 13 }],
    ])
  })

  it('points at a phrase that names another host, and at the name', () => {
    const { warnings } = compileLettuce({ 'hosts/lettuce.yaml': entries('it wilts like a rose'), 'hosts/rose.yaml': ROSE })
    expect(warnings.map(({ code, at }) => [code, ...at.map((place) => ({ file: place.file.path, ...lineAndColumn(place) }))])).toEqual([
      ['SHADOWED_ENTRY', { file: 'trees/hosts/lettuce.yaml', line: 21, column: 13 }, { file: 'trees/hosts/rose.yaml', line: 3, column: 10 }],
    ])
  })

  it('reports every shadowed phrase, not only the first', () => {
    expect(warningsOf({ 'hosts/lettuce.yaml': entries('something on the leaves', 'pale patches on the leaves', 'like a rose'), 'hosts/rose.yaml': ROSE })).toEqual([
      { code: 'SHADOWED_ENTRY', at: 'trees/hosts/lettuce.yaml:21:13', nearest: [] },
      { code: 'SHADOWED_ENTRY', at: 'trees/hosts/lettuce.yaml:21:40', nearest: [] },
      { code: 'SHADOWED_ENTRY', at: 'trees/hosts/lettuce.yaml:21:70', nearest: [] },
    ])
  })

  it('is silent where the host accepts it with a reason', () => {
    expect(warningsOf({
      'hosts/lettuce.yaml': (text) => append('accepts: [{ warning: SHADOWED_ENTRY, because: people say so }]\n')(entries('like a rose')(text)),
      'hosts/rose.yaml': ROSE,
    })).toEqual([])
  })
})
