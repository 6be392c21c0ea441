import { describe, expect, it } from 'vitest'
import type { CaseView, PracticeTruth } from '../../shared/index.js'
import { verdictOf } from '../../src/web/sheet/practice.js'

const truth = (ends: PracticeTruth['ends']): PracticeTruth => ({ practice: 'p', hostName: 'Lettuce', answers: [], ends })
const drop: PracticeTruth['ends'] = { kind: 'problem', problem: 'lettuce-drop', name: 'Lettuce drop', alsoRight: [{ problem: 'lettuce-bottom-rot', name: 'Bottom rot' }] }
// Only what a verdict looks at.
const ended = (step: object, cards: readonly { id: string }[] = []) => ({ step, cards }) as unknown as Pick<CaseView, 'step' | 'cards'>
const concluded = (problem: string, name: string) => ended({ kind: 'conclude', card: { problem, name } })
const handedOver = ended({ kind: 'hand-over' })

describe('how a practice call went', () => {
  it('is right where the sheet came to the true problem, or to one that is right as well', () => {
    expect(verdictOf(truth(drop), concluded('lettuce-drop', 'Lettuce drop'))).toEqual({ right: true, words: 'It was Lettuce drop.' })
    expect(verdictOf(truth(drop), concluded('lettuce-bottom-rot', 'Bottom rot')).right).toBe(true)
  })

  it('names the true problem where the sheet came to another, or to none', () => {
    expect(verdictOf(truth(drop), concluded('slugs-and-snails', 'Slugs and snails'))).toEqual({ right: false, words: 'It was Lettuce drop. The sheet came to Slugs and snails.' })
    expect(verdictOf(truth(drop), handedOver).words).toMatch(/It was Lettuce drop/)
  })

  it('is right to hand over what nobody could tell, and wrong to conclude it', () => {
    expect(verdictOf(truth({ kind: 'hand over' }), handedOver).right).toBe(true)
    expect(verdictOf(truth({ kind: 'hand over' }), concluded('lettuce-drop', 'Lettuce drop')).right).toBe(false)
  })

  it('asks first whether the danger was heard', () => {
    const danger = truth({ kind: 'red flag', redFlag: 'pet-ate-plant', title: 'A pet may have eaten a plant' })
    expect(verdictOf(danger, ended({ kind: 'red-flag' }, [{ id: 'pet-ate-plant' }])).right).toBe(true)
    expect(verdictOf(danger, concluded('lettuce-drop', 'Lettuce drop'))).toEqual({ right: false, words: 'This was a danger first of all: A pet may have eaten a plant.' })
  })
})
