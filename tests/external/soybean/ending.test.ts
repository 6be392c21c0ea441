import { describe, expect, it } from 'vitest'
import type { Stand } from '../../bench/asked-tree.js'
import { chooseEnding } from '../../bench/soybean-choice.js'
import { endOf, type Play } from '../../bench/soybean-play.js'

/** One problem against another and *something not listed here*. */
function stand(first: number, worth: number, notListed = 0, between = 0): Stand {
  const shares = Float64Array.from([first, 1 - first - notListed, notListed])
  const leading = notListed > Math.max(first, 1 - first - notListed) ? 2 : first >= 0.5 ? 0 : 1
  return { shares, leading, claimed: shares[leading] ?? 0, check: 0, worth, between }
}

const ending = { early: 0.9, confirming: 0.1, last: 0.7, leastWorth: 0.06 }

describe('where a played case ends', () => {
  it('concludes as soon as the early bar is reached', () => {
    expect(endOf({ truth: 0, stands: [stand(0.6, 0.5), stand(0.91, 0.5), stand(0.5, 0.5)] }, ending)).toMatchObject({ checks: 1, isResolved: true, claimed: 0.91 })
  })

  it('concludes at the lower bar once the checks are used up', () => {
    expect(endOf({ truth: 0, stands: [stand(0.6, 0.5), stand(0.72, 0.5)] }, ending)).toMatchObject({ checks: 1, isResolved: true })
    expect(endOf({ truth: 0, stands: [stand(0.6, 0.5), stand(0.69, 0.5)] }, ending)).toMatchObject({ checks: 1, isResolved: false })
  })

  it('hands over when the case cannot be concluded and no check is worth asking', () => {
    expect(endOf({ truth: 0, stands: [stand(0.6, 0.5), stand(0.65, 0.05), stand(0.95, 0.5)] }, ending)).toMatchObject({ checks: 1, isResolved: false })
  })

  it('asks on for little when the case could be concluded as it stands', () => {
    expect(endOf({ truth: 0, stands: [stand(0.6, 0.5), stand(0.75, 0.05), stand(0.95, 0.5)] }, ending)).toMatchObject({ checks: 2, isResolved: true })
  })

  it('asks one check more before it concludes, once, when that check tells the first two apart', () => {
    const doubtful = stand(0.91, 0.5, 0, 0.2)
    expect(endOf({ truth: 0, stands: [doubtful, stand(0.96, 0.5), stand(0.97, 0.5)] }, ending)).toMatchObject({ checks: 1, isResolved: true })
    expect(endOf({ truth: 1, stands: [doubtful, stand(0.2, 0.5), stand(0.02, 0.5), stand(0.01, 0.5)] }, ending)).toMatchObject({ checks: 2, leading: 1, isResolved: true })
    expect(endOf({ truth: 0, stands: [doubtful, stand(0.8, 0.5), doubtful, stand(0.97, 0.5)] }, ending)).toMatchObject({ checks: 2, isResolved: true })
  })

  it('does not confirm by a check that could not tell the first two apart', () => {
    expect(endOf({ truth: 0, stands: [stand(0.91, 0.5, 0, 0.09), stand(0.96, 0.5)] }, ending)).toMatchObject({ checks: 0, isResolved: true })
  })

  it('never concludes something that is not listed', () => {
    expect(endOf({ truth: 0, stands: [stand(0.02, 0, 0.95)] }, ending)).toMatchObject({ checks: 0, isResolved: false })
  })
})

describe('the choice of an ending', () => {
  /** A case that stands at 0.88 after two checks and gets sure of `truth` at the fifth. */
  const late = (truth: number): Play => ({ truth, stands: [0.6, 0.7, 0.88, 0.88, 0.88, truth === 0 ? 0.97 : 0.03].map((first) => stand(first, 0.5)) })
  const quick: Play = { truth: 0, stands: [stand(0.6, 0.5), stand(0.95, 0.5)] }

  it('asks on when concluding early would be wrong too often', () => {
    const clean = [...Array.from({ length: 30 }, () => quick), late(1), late(1)]
    expect(chooseEnding({ clean, flipped: clean }).early).toBeGreaterThan(0.88)
  })

  it('asks on when that finds out a wrong answer, though all goes well as recorded', () => {
    const foundOut: Play = { truth: 1, stands: [0.6, 0.9, 0.2, 0.02].map((first) => stand(first, 0.5)) }
    expect(chooseEnding({ clean: [quick], flipped: [foundOut] }).early).toBeGreaterThan(0.9)
    expect(chooseEnding({ clean: [quick], flipped: [quick] }).early).toBeLessThanOrEqual(0.9)
  })

  it('keeps enough cases resolved, even where fewer would be right more often', () => {
    // Of a hundred, 88 are sure at once and right; the other twelve end at 0.7, three in four of them right.
    const unsure = (truth: number): Play => ({ truth, stands: [stand(0.6, 0.5), stand(0.7, 0.5)] })
    const clean = [...Array.from({ length: 88 }, () => quick), ...Array.from({ length: 9 }, () => unsure(0)), ...Array.from({ length: 3 }, () => unsure(1))]
    expect(chooseEnding({ clean, flipped: clean }).last).toBeLessThanOrEqual(0.7)
    const enough = [...clean, ...Array.from({ length: 60 }, () => quick)]
    expect(chooseEnding({ clean: enough, flipped: enough }).last).toBeGreaterThan(0.7)
  })
})
