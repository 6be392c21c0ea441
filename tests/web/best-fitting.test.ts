import { describe, expect, it } from 'vitest'
import { bestFitting } from '../../src/web/case/best-fitting.js'

const plants = ['Apple', 'Crab apple', 'Moth orchid', 'Rosé', 'Tomato', 'Tobacco plant']
const find = (typed: string, most?: number) => bestFitting(plants, plant => [plant], typed, most)

describe('the rows that fit what is typed', () => {
  it('are all rows while nothing is typed', () => {
    expect(find('').shown).toEqual(plants)
  })

  it('have those first that begin with the typed letters', () => {
    expect(find('apple').shown).toEqual(['Apple', 'Crab apple'])
  })

  it('hold every typed word in any order, case and accents aside', () => {
    expect(find('ORCHID moth').shown).toEqual(['Moth orchid'])
    expect(find('rose').shown).toEqual(['Rosé'])
  })

  it('are none when nothing fits, and never more than asked for', () => {
    expect(find('zzz')).toEqual({ shown: [], hidden: 0 })
    expect(find('to', 1)).toEqual({ shown: ['Tomato'], hidden: 1 })
  })
})
