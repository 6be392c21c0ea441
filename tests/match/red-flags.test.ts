import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { HEARD, QUIET } from './red-flag-sentences.js'
import { redFlagGuide } from './small-guide.js'

const guide = await redFlagGuide()
const index = buildMatchIndex(guide)

function heard(words: string): readonly string[] {
  return matchQuestion(index, words).redFlags.map(({ redFlag }) => redFlag)
}

describe('red flags of the demonstration guide', () => {
  for (const [id, sentences] of Object.entries(HEARD)) {
    it.each(sentences)(`${id} is heard in: %s`, (words) => {
      expect(heard(words)).toContain(id)
    })
  }

  it.each(QUIET)('nothing is heard in: %s', (words) => {
    expect(heard(words)).toEqual([])
  })

  it('hears every red flag there is at least six times', () => {
    const tried = Object.entries(HEARD).filter(([, sentences]) => sentences.length >= 6).map(([id]) => id)
    expect(tried.sort()).toEqual(guide.redFlags.map(({ id }) => id as string).sort())
  })

  it('has at least eighty sentences that must be heard and eighty that must not', () => {
    expect(Object.values(HEARD).flat().length).toBeGreaterThanOrEqual(80)
    expect(QUIET.length).toBeGreaterThanOrEqual(80)
  })

  it.each([
    ['is it poisonous if a child eats it?', 'caution'],
    ['can I eat the apples with scab', 'caution'],
    ['what happens if my dog eats a laurel leaf', 'caution'],
    ['are these berries toxic to kids', 'caution'],
  ])('a question about what has not happened is a caution, not an emergency: %s', (words, level) => {
    const levels = heard(words).map((id) => guide.redFlags.find((flag) => flag.id === id)?.level)
    expect(levels.length).toBeGreaterThan(0)
    expect(new Set(levels)).toEqual(new Set([level]))
  })

  it.each([
    'nobody ate any of them',
    'no one has eaten the berries',
    'my child has not eaten the berries',
    "the baby hasn't swallowed any leaves",
    'my dog never ate the lily',
  ])('a plain no is no emergency: %s', (words) => {
    expect(heard(words)).toEqual([])
  })

  it.each([
    'my son ate berries and he is not well',
    'I am not sure which berries my toddler ate',
    "my toddler ate a berry, it wasn't ripe",
    "my daughter didn't chew the leaf, she swallowed the leaf",
  ])('a no about something else does not silence it: %s', (words) => {
    expect(heard(words)).toContain('someone-ate-plant')
  })

  it('puts emergencies before cautions', () => {
    expect(heard('are these berries poisonous? my toddler ate one')).toEqual(['someone-ate-plant', 'poison-question'])
  })

  it('quotes the words that raised it as the asker wrote them', () => {
    const words = 'HELP — my TODDLER’s friend… the todler Swallowed 2 “berries”'
    const [flag] = matchQuestion(index, words).redFlags
    expect(flag?.redFlag).toBe('someone-ate-plant')
    for (const { text, at } of flag?.words ?? []) expect(words.slice(at, at + text.length)).toBe(text)
    expect(flag?.words.map(({ text }) => text)).toContain('Swallowed')
  })

  it.each([
    ['my toddlr has swollowed a berrie', 'someone-ate-plant'],
    ['the dog chwed a foxglove', 'pet-ate-plant'],
    ["the baby's been gnawing the ivy", 'someone-ate-plant'],
  ])('reads misspelled words of danger: %s', (words, id) => {
    expect(heard(words)).toContain(id)
  })

  it('takes no rightly spelled word for a misspelled danger', () => {
    expect(heard('squirrel ate my tulips')).toEqual([])
  })

  it('reads a misspelled danger after many words that it does not know', () => {
    const before = 'Josephine and Bartholomew painted the wicker chairs on the veranda turquoise. The gazebo needs varnishing and the pergola leans on the trellis beside the conservatory. Our neighbour plays the clarinet and the accordion near the bandstand on Wednesdays. '
    expect(heard(`${before}my toddlr swollowed a berrie`)).toContain('someone-ate-plant')
  })

  it('hears the last sentence of a very long message', () => {
    const story = 'The lawn is yellow and the roses have spots. '.repeat(400)
    expect(heard(`${story} Also my toddler ate some berries.`)).toContain('someone-ate-plant')
  })

  it('stops the plant question when someone may want to harm themselves, and gives only the listening line', () => {
    const flag = guide.redFlags.find(({ id }) => id === 'self-harm')
    expect(flag).toMatchObject({ level: 'emergency', then: 'stop', card: { call: ['human help line'], doNot: [] } })
  })

  it.each([
    'I have swallowed the slug pellets and I want to die',
    'my brother drank weedkiller, he says he wants to end his life',
    'I took an overdose of tablets and I do not want to be here any more',
    'she ate the yew berries on purpose',
  ])('shows what to do about a poison already taken beside the listening line: %s', (words) => {
    const ids = heard(words)
    expect(ids).toContain('self-harm')
    expect(ids.some((id) => id === 'someone-ate-plant' || id === 'spray-exposure')).toBe(true)
  })

  it('calls every number by a name of the region, the emergency number wherever a card sends people to it', () => {
    const silent = guide.redFlags.filter(({ card }) => /call the emergency number/iu.test([...card.doNow, ...card.doNot].join(' ')) && !card.call.includes('emergency'))
    expect(silent.map(({ id }) => id)).toEqual([])
  })

  it('writes no telephone number into a card', () => {
    for (const { card } of guide.redFlags) {
      for (const line of [...card.doNow, ...card.doNot]) expect(line).not.toMatch(/\d{3}[- ]?\d{3}/u)
    }
  })

  /**
   * First steps that poison centres and first-aid handbooks agree on: J. A. Henry and H. M. Wiseman, Management of
   * poisoning: a handbook for health care workers (WHO 1997), part 1; for sharp things in the eye, wounds, falls and
   * bites the International First Aid, Resuscitation, and Education Guidelines (IFRC 2020); for smoke of poison ivy
   * Protecting Yourself from Poisonous Plants (NIOSH 2010). Cited from memory.
   */
  it.each([
    ['someone-ate-plant', /not make them vomit/u],
    ['spray-exposure', /not make anyone vomit/u],
    ['sap-on-skin', /soap and .*running water for 15 to 20 minutes/u],
    ['something-in-eyes', /running water.* 15 to 20 minutes/u],
    ['someone-ate-plant', /Keep a piece of the plant, or the label/u],
    ['someone-ate-plant', /chemical: give nothing to drink, unless the poison line says so/u],
    ['something-in-eyes', /(?:thorn|splinter).* do not rinse it and do not pull it out/u],
    ['something-in-eyes', /After you have rinsed, call the poison line/u],
    ['harmful-smoke', /fresh air/u],
    ['harmful-smoke', /breathing is hard.* call the emergency number/u],
    ['spray-misuse', /very ill.* call the emergency number/u],
    ['spray-misuse', /eaten sprayed food, call the poison line/u],
    ['sap-on-skin', /See a doctor the same day if .*blisters/u],
    ['sap-on-skin', /See a doctor at once if an eye/u],
    ['injury', /press hard on the wound/u],
    ['injury', /Do not cut, suck, ice or tie off a snake bite/u],
    ['injury', /emergency number after any snake bite/u],
    ['small-wound', /tetanus/u],
  ])('%s gives the handbook step %s', (id, step) => {
    const card = guide.redFlags.find((flag) => flag.id === id)?.card
    expect([...(card?.doNow ?? []), ...(card?.doNot ?? [])].join(' ')).toMatch(step)
  })
})
