import { describe, expect, it } from 'vitest'
import { offeredPlaces } from '../../src/web/case/offered-places.js'

const heard = (text: string) => ({ text, at: 0 })
const entry = (host: string, node: string, said: string[] = []) => ({
  host, hostName: host, node, phrase: `${node} on ${host}`, score: 0.5, words: said.map(heard),
})

describe('the places offered for confirmation', () => {
  it('are the best three complaints with the words that led there, each said once', () => {
    const offers = offeredPlaces({ hosts: [], entries: [entry('rose', 'spots', ['black', 'black', 'spots']), entry('rose', 'holes'), entry('apple', 'spots'), entry('hosta', 'holes')] })
    expect(offers.map(offer => `${offer.host}/${offer.node}`)).toEqual(['rose/spots', 'rose/holes', 'apple/spots'])
    expect(offers[0]?.heard).toEqual(['black', 'spots'])
  })

  it('leave out the list of a group of plants where one of them was named, and nothing that explains a name', () => {
    const name = 'Border flower (hellebore, foxglove and others)'
    const shown = (score: number, hostName: string) => offeredPlaces({
      hosts: [{ host: 'flower', name: hostName, score, words: [heard('foxglove')] }], entries: [{ ...entry('flower', 'spots'), hostName }],
    }).map(offer => offer.shortName)
    expect(shown(1, name)).toEqual(['Border flower'])
    expect(shown(0.5, name)).toEqual([name])
    expect(shown(1, 'Plane tree (American sycamore)')).toEqual(['Plane tree (American sycamore)'])
  })

  it('hold a plant that was named although no complaint of it fits', () => {
    const offers = offeredPlaces({ hosts: [{ host: 'maple', name: 'Maple', score: 1, words: [heard('maple')] }], entries: [entry('rose', 'spots')] })
    expect(offers.map(offer => [offer.host, offer.node])).toEqual([['rose', 'spots'], ['maple', null]])
  })

  it('hold no plant that nobody named and that fits less than half as well as the first', () => {
    const offers = offeredPlaces({ hosts: [{ host: 'rose', name: 'Rose', score: 0.6, words: [heard('rose')] }], entries: [entry('garden-conditions', 'worry'), { ...entry('jasmine', 'kind'), score: 0.2 }, { ...entry('rose', 'spots'), score: 0.2 }, { ...entry('apple', 'leaf'), score: 0.3 }] })
    expect(offers.map(offer => offer.host)).toEqual(['garden-conditions', 'rose', 'apple'])
  })

  it('keep the plant that was named when jobs to do to it would crowd it out', () => {
    const offers = offeredPlaces({ hosts: [{ host: 'hydrangea', name: 'Hydrangea', score: 1, words: [heard('hydrangea')] }], entries: [entry('pruning', 'cut'), entry('planting', 'move'), entry('pruning', 'hedge')] })
    expect(offers.map(offer => [offer.host, offer.node])).toEqual([['pruning', 'cut'], ['planting', 'move'], ['hydrangea', null]])
  })

  it('hold no complaint for a plant of which only the name was heard, unless it fits well all the same', () => {
    const hosts = [{ host: 'hydrangea', name: 'Hydrangea', score: 1, words: [heard('climbing hydrangea')] }]
    const poor = (said: string[]) => ({ ...entry('hydrangea', 'climber', said), score: 0.26 })
    const places = (entries: ReturnType<typeof poor>[]) => offeredPlaces({ hosts, entries }).map(offer => offer.node)
    // "when do I prune my climbing hydrangea"
    expect(places([poor(['hydrangea']), poor([]), poor(['Climbing', 'hydrangea'])])).toEqual([null])
    expect(places([poor(['hydrangea']), poor(['hydrangea', 'flowers'])])).toEqual(['climber'])
    expect(places([entry('hydrangea', 'climber', ['hydrangea'])])).toEqual(['climber'])
    // A plant that was only guessed at has no name that was heard.
    expect(offeredPlaces({ hosts: hosts.map(host => ({ ...host, score: 0.6 })), entries: [poor(['hydrangea'])] }).map(offer => offer.node)).toEqual(['climber'])
  })

  it('are none when nothing was heard', () => {
    expect(offeredPlaces({ hosts: [], entries: [] })).toEqual([])
  })

  it('after an emergency hold no guess from a single word, no complaint of a plant that was not named, and no unknown plant', () => {
    const berries = { hosts: [{ host: 'unknown-plant', name: 'Unknown plant', score: 1, words: [heard('hedge')] }], entries: [entry('tomato', 'fruit', ['berries']), entry('unknown-plant', 'berries', ['berries', 'hedge'])] }
    expect(offeredPlaces(berries, [{ level: 'emergency' }])).toEqual([])
    expect(offeredPlaces(berries, [{ level: 'caution' }])).toHaveLength(2)
    expect(offeredPlaces(berries)).toHaveLength(2)
  })

  it('after an emergency hold what was plainly said, then what did the harm, then the plant itself', () => {
    const rose = { hosts: [{ host: 'rose', name: 'Rose', score: 1, words: [heard('rose')] }], entries: [entry('rose', 'spots', ['black', 'spots']), { ...entry('rose', 'holes', ['leaves']), score: 0.3 }] }
    const sap = { level: 'emergency' as const, afterwards: { host: 'weed', hostName: 'Weeds', node: 'kind', offer: 'Which plant it was' } }
    const places = (heardPlace: typeof rose, cards: readonly (typeof sap)[]) => offeredPlaces(heardPlace, cards).map(({ host, node, phrase, ofHarm }) => [host, node, phrase, ofHarm ?? false])
    expect(places(rose, [sap])).toEqual([['rose', 'spots', 'spots on rose', false], ['weed', 'kind', 'Which plant it was', true], ['rose', null, null, false]])
    expect(places({ ...rose, entries: [] }, [sap, sap])).toEqual([['weed', 'kind', 'Which plant it was', true], ['rose', null, null, false]])
    // The words name the very plant: the tree is entered there.
    expect(places({ hosts: [], entries: [entry('weed', 'giant', ['hogweed'])] }, [sap])).toEqual([['weed', 'giant', 'Which plant it was', true]])
  })
})
