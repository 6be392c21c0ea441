import { describe, expect, it } from 'vitest'
import { passedOver } from '../../src/engine/passed-over.js'
import type { Guide, Host } from '../../src/guide/index.js'
import { lettuceGuide, swap } from '../guide/lettuce-world.js'

function lettuceOf(guide: Guide): Host {
  const host = guide.hosts[0]
  if (host === undefined) throw new Error('The lettuce world has no lettuce.')
  return host
}

/** The checks that a complaint passes over, with the answers it stands for. */
function passed(guide: Guide, entry: string) {
  const host = lettuceOf(guide)
  const node = host.nodes.findIndex(({ name }) => name === entry)
  return [...passedOver(host, node)].map(([check, answers]) => (
    [guide.checks[check]?.id, ...[...answers].map((answer) => guide.checks[check]?.answers[answer]?.label)]))
}

describe('what a complaint has said already', () => {
  it('is every check that all ways to it go through', () => {
    expect(passed(lettuceGuide(), 'slime')).toEqual([['leaf-top', 'ragged holes']])
  })

  it('is nothing at the top of the tree', () => {
    expect(passed(lettuceGuide(), 'top')).toEqual([])
  })

  it('is not a check that one of two ways goes round', () => {
    const two = lettuceGuide({
      'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
    })
    // Slime is now reached from the top at once and by way of the underside.
    expect(passed(two, 'slime')).toEqual([['leaf-top', 'pale patches', 'ragged holes']])
    expect(passed(two, 'underside')).toEqual([['leaf-top', 'pale patches']])
  })
})
