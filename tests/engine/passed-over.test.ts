import { describe, expect, it } from 'vitest'
import { passedOver } from '../../src/engine/passed-over.js'
import type { Guide, Host } from '../../src/guide/index.js'
import { lettuceGuide, swap } from '../guide/lettuce-world.js'

function lettuceOf(guide: Guide): Host {
  const host = guide.hosts[0]
  if (host === undefined) throw new Error('The lettuce world has no lettuce.')
  return host
}

/** Ids of the checks that a complaint passes over. */
function passed(guide: Guide, entry: string): (string | undefined)[] {
  const host = lettuceOf(guide)
  const node = host.nodes.findIndex(({ name }) => name === entry)
  return [...passedOver(host, node)].map((check) => guide.checks[check]?.id)
}

describe('what a complaint has said already', () => {
  it('is every check that all ways to it go through', () => {
    expect(passed(lettuceGuide(), 'slime')).toEqual(['leaf-top'])
  })

  it('is nothing at the top of the tree', () => {
    expect(passed(lettuceGuide(), 'top')).toEqual([])
  })

  it('is not a check that one of two ways goes round', () => {
    const two = lettuceGuide({
      'hosts/lettuce.yaml': swap('other answers: { hand over: "Pale patches without fuzz need a closer look." }', 'other answers: slime'),
    })
    // Slime is now reached from the top at once and by way of the underside.
    expect(passed(two, 'slime')).toEqual(['leaf-top'])
    expect(passed(two, 'underside')).toEqual(['leaf-top'])
  })
})
