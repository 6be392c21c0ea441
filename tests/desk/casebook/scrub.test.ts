import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scrubWords } from '../../../src/desk/casebook/scrub.js'

const clean = (words: string, contact = {}) => scrubWords(words, contact).words

describe('taking personal data out of an asker\'s words', () => {
  it.each([
    ['write to r.ashdown+plants@larkmoor.example please', 'write to (e-mail address) please'],
    ['see www.ashdown.example/garden?x=1 for a picture', 'see (web address) for a picture'],
    ['ring me on 555-0190 or (0555) 123 4567', 'ring me on (telephone number) or (telephone number)'],
    ['+44 20 7946 0958 after six', '(telephone number) after six'],
    ['ring 555 - 0190, or 555 – 0191', 'ring (telephone number), or (telephone number)'],
    ['05 55 12 34 56 or 0555.123.4567 or +44 (0) 20 7946 0958', '(telephone number) or (telephone number) or (telephone number)'],
    ['0555 123 4567 0555 123 4568 9', '(telephone number)'],
    ['Call me on 55 01 90. Phone: 55-01-9, tel. no. 55019', 'Call me on (telephone number). Phone: (telephone number), tel. no. (telephone number)'],
    ['My name is Rosalind Ashdown and my lettuce is slimy', 'My name is (name) and my lettuce is slimy'],
    ['my name is rosalind and my lettuce is slimy', 'my name is (name) and my lettuce is slimy'],
    ['Hello, I\'m called Jo. Spots!', 'Hello, I\'m called (name). Spots!'],
    ['This is Rosalind Ashdown, about the tree', 'This is (name), about the tree'],
    ['ask for Mrs. Ashdown at the gate', 'ask for (name) at the gate'],
    ['holes in the leaves.\nThanks, Rosalind', 'holes in the leaves.\nThanks, (name)'],
    ['Kind regards,\nR. Ashdown', 'Kind regards,\n(name)'],
    ['My name is R. J. Ashdown. The lettuce is slimy', 'My name is (name). The lettuce is slimy'],
    ['I live at 12 Mill Lane, the bed by the door', 'I live at (address), the bed by the door'],
    ['come to 7b Upper Carse Road', 'come to (address)'],
    ['it is at 12 mill lane', 'it is at (address)'],
    ['postcode LV4 2QX', 'postcode (address)'],
  ])('of %j leaves %j', (words, expected) => {
    expect(clean(words)).toBe(expected)
  })

  it.each([
    'since 2026-05-14 at 10:30 the leaves of 12 plants have 3 mm holes', 'sown on 14.05.2026, 25 mm of rain, 10-15 cm tall',
    'I am worried, the tree is 30 feet close to the road', 'This is my lettuce and I am sure', 'Thanks for any help',
    'from 2026-05-14 - 2026-05-20, or 14.05.2026 - 20.05.2026', 'ring spots on 10 - 15 leaves', 'I call 5 plants dead since 2024', 'rows 1 - 4 and 10 – 12',
    'about 100 spots on 20 leaves of each of 40 plants in 3 rows', 'white fuzz underneath', 'the apple by the mill has scab',
    'I\'m in Holt Fen and it rained for 2 weeks', 'our 5 trees drive me mad', 'ten rows of Lettuce by the Lane',
  ])('leaves %j as it is', (words) => {
    expect(scrubWords(words, {})).toEqual({ words, removed: [] })
  })

  it('takes the name that was left as contact out wherever it stands, unless it is a plant\'s', () => {
    expect(clean('Ashdown here, Rosalind Ashdown\'s bed, ashdown', { name: 'Rosalind Ashdown' })).toBe('(name) here, (name)\'s bed, (name)')
    expect(scrubWords('Rose here: my rose has spots', { name: 'Rose Holm' }, new Set(['rose'])).words).toBe('Rose here: my rose has spots')
  })

  it('takes the telephone number that was left as contact out however it is set apart, and however short', () => {
    const contact = { phone: '+99 555 0190' }
    for (const written of ['0190', '5550190', '55-50190', '(555) 01 90', '0 5 5 5 0 1 9 0', '+99 (0) 555–0190']) {
      expect(scrubWords(`evenings ${written} best`, contact).words).toBe(written === '0190' ? 'evenings 0190 best' : 'evenings (telephone number) best')
    }
    expect(clean('evenings 01-90 or 0 190', { phone: '0190' })).toBe('evenings (telephone number) or (telephone number)')
    expect(clean('I have 12 plants', { phone: '12' })).toBe('I have 12 plants')
  })

  it('takes the mail address that was left as contact out even where it does not look like one', () => {
    expect(clean('at ashdown@larkmoor, evenings', { email: 'Ashdown@larkmoor' })).toBe('at (e-mail address), evenings')
  })

  it('counts what it took out, by kind', () => {
    expect(scrubWords('My name is Jo. a@b.example, c@d.example', {}).removed)
      .toEqual([{ kind: 'e-mail address', count: 2 }, { kind: 'name', count: 1 }])
  })

  it('leaves no e-mail address and no long number in any words, and does not fail on any', () => {
    const piece = fc.oneof(fc.string({ unit: 'grapheme' }), fc.emailAddress(), fc.constantFrom('555-0190', '0555 123 4567', ' my name is ', '\n', '((', '+', '$&'))
    fc.assert(fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
      const words = pieces.join(' ')
      const once = clean(words)
      expect(once).not.toMatch(/[a-z0-9]@[a-z0-9-]+\.[a-z]{2,}/i)
      expect(once).not.toMatch(/(?<![\p{L}\d])\d{7,15}(?![\p{L}\d])/u)
      expect(clean('')).toBe('')
    }))
  })
})
