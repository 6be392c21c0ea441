import { describe, expect, it } from 'vitest'
import type { Stand } from '../../bench/asked-tree.js'
import { chooseEnding } from '../../bench/soybean-choice.js'
import { endOf, type Play } from '../../bench/soybean-play.js'

/** One problem against another and *something not listed here*. */
function stand(first: number, worth: number, notListed = 0): Stand {
  const shares = Float64Array.from([first, 1 - first - notListed, notListed])
  const leading = notListed > Math.max(first, 1 - first - notListed) ? 2 : first >= 0.5 ? 0 : 1
  return { shares, leading, claimed: shares[leading] ?? 0, check: 0, worth }
}

const ending = { early: 0.9, last: 0.7, leastWorth: 0.06 }

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
    expect(chooseEnding([{ misread: 0.03, plays: { clean, flipped: clean } }]).ending.early).toBeGreaterThan(0.88)
  })

  it('takes the misread rate that is right more often when answers are wrong', () => {
    const plays = (flipped: Play) => ({ clean: [quick], flipped: [flipped] })
    const wrong: Play = { truth: 1, stands: quick.stands }
    expect(chooseEnding([{ misread: 0.03, plays: plays(wrong) }, { misread: 0.05, plays: plays(quick) }]).misread).toBe(0.05)
  })
})
