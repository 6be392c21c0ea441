import { describe, expect, it } from 'vitest'
import { html, type Letter, plainText } from '../../src/mail/letter.js'

const letter: Letter = {
  to: 'asker@larkmoor.example', subject: 'Larkmoor Plant Helpline: the answer',
  parts: [
    { kind: 'words', text: 'Here is the answer.' }, { kind: 'quoted', text: 'It is <b>aphids</b> & ants.\nRinse them off.' },
    { kind: 'link', text: 'The sheet:', address: 'https://plants.example/case#a"b' },
  ],
}

describe('a letter', () => {
  it('says the same as plain text', () => {
    expect(plainText(letter)).toBe([
      'Here is the answer.', '', '    It is <b>aphids</b> & ants.', '    Rinse them off.', '', 'The sheet:', 'https://plants.example/case#a"b', '',
    ].join('\n'))
  })

  it('shows what people wrote as text in HTML, and the address of a link in full', () => {
    const page = html(letter)
    expect(page).toContain('It is &lt;b&gt;aphids&lt;/b&gt; &amp; ants.\nRinse them off.')
    expect(page).toContain('<a href="https://plants.example/case#a&quot;b">https://plants.example/case#a&quot;b</a>')
  })

  it('loads nothing and runs nothing when it is opened', () => {
    expect(html(letter)).not.toMatch(/<(img|script|link|iframe|form|object)|url\(|src=|@import/i)
  })
})
