import { describe, expect, it } from 'vitest'
import { phraseShown } from '../../../src/desk/views/untranslated.js'
import { wholeGuide } from '../../whole-guide.js'

const own = await wholeGuide()
const nodeOf = (host: string): readonly string[] => own.hosts.find(({ id }) => id === host)?.nodes.find(({ entry }) => entry.length > 1)?.entry ?? []
const [first = '', second = ''] = nodeOf('rose')

describe('the phrase in which a complaint is shown', () => {
  it('is what was heard, where the guide speaks its own language', () => {
    expect(phraseShown(own, [first, second], second)).toBe(second)
  })

  it('is the name of the garden job that was heard, which is no phrase of its complaint', () => {
    expect(phraseShown(own, [first, second], 'Choosing a plant for a place')).toBe('Choosing a plant for a place')
  })

  it('is the first phrase of a complaint that was chosen', () => {
    expect(phraseShown(own, [first, second], null)).toBe(first)
  })

  it('is in the language of the page where that has a phrase, whatever was heard', () => {
    expect(phraseShown(own, [first, 'manchas negras'], first)).toBe('manchas negras')
    expect(phraseShown(own, [first, 'manchas negras', 'hojas con manchas'], 'hojas con manchas')).toBe('hojas con manchas')
  })
})
