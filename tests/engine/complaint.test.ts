import { describe, expect, it } from 'vitest'
import { readCase } from '../../src/engine/index.js'
import { lettuceGuide } from '../guide/lettuce-world.js'
import { lettuceCase, MAY_DAY } from './lettuce-case.js'

const guide = lettuceGuide()
const shares = (answers: readonly (readonly [string, string])[]) =>
  readCase(guide, lettuceCase(answers, 'slime'), MAY_DAY).differential.map(({ problem, probability }) => [problem, probability] as const)

describe('what the complaint has said', () => {
  it('is weighed until the asker answers the check themselves, and *not sure* is no answer', () => {
    // Everybody whose complaint is slime has ragged holes on top: the check is passed over.
    const said = shares([])
    expect(shares([['leaf-top', 'not sure']])).toEqual(said)
    expect(shares([['leaf-top', "can't look now"]])).toEqual(said)
    expect(shares([['leaf-top', 'ragged holes']])).not.toEqual(said)
  })
})
