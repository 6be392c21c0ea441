import { describe, expect, it } from 'vitest'
import { compileLettuce, swap } from './lettuce-world.js'

/** What is said of the region's own file, without what follows from having none. */
const misshapen = (count: string) => withCount(count).errors.filter(({ code }) => code === 'SHAPE')

const withCount = (count: string) => compileLettuce({ 'region.yaml': swap('units: metric\n', `units: metric\nleast public count: ${count}\n`) })

describe('the smallest count that everyone may read', () => {
  it('is 5 where the region names none, and else what it names', () => {
    expect(compileLettuce({}).guide?.region.leastPublicCount).toBe(5)
    expect(withCount('10').guide?.region.leastPublicCount).toBe(10)
    expect(withCount('3').guide?.region.leastPublicCount).toBe(3)
  })

  it.each(['2', '0', '-5', '51', '4.5', 'few'])('is refused as %s, with where it stands', (count) => {
    expect(withCount(count).guide).toBeNull()
    expect(misshapen(count).map(({ at: [place] }) => place.file.path)).toEqual(['trees/region.yaml'])
    expect(misshapen(count)[0]?.message).toContain('least public count')
  })

  it('is refused when too small with why', () => {
    expect(misshapen('2')[0]?.message).toContain('smaller counts can point to one garden')
  })
})
