import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Letter, openMailer } from '../../src/mail/index.js'
import { type MailServer, openMailServer } from './mail-server.js'

let server: MailServer
beforeEach(async () => {
  server = await openMailServer()
})
afterEach(() => server.close())

const FROM = 'helpline@plants.example'
const letter: Letter = {
  to: 'ashdown@larkmoor.example', subject: 'Larkmoor Plant Helpline: grüße',
  parts: [{ kind: 'words', text: 'Schöne Grüße from the valley.' }, { kind: 'link', text: 'Look:', address: 'https://plants.example/case#abc' }],
}
const send = (made = '1 received:1: noon', url = server.url) => openMailer({ smtpUrl: url, from: FROM }).send(letter, made, 'Larkmoor Plant Helpline')

describe('sending a letter over SMTP', () => {
  it('sends plain text and HTML with every header that a letter needs', async () => {
    expect(await send()).toEqual({ kind: 'sent' })
    const [got] = server.letters
    // RFC 5322, section 3.6: From, To, Date and Message-ID; RFC 2046, section 5.1.4: alternatives, plainest first.
    expect(got).toMatchObject({
      subject: letter.subject, from: { value: [{ name: 'Larkmoor Plant Helpline', address: FROM }] },
      to: { value: [{ address: letter.to, name: '' }] }, messageId: expect.stringMatching(/^<[0-9a-f]{32}@plants\.example>$/) as string,
      text: 'Schöne Grüße from the valley.\n\nLook:\nhttps://plants.example/case#abc\n',
    })
    expect(got?.html).toContain('<p>Schöne Grüße from the valley.</p>')
    expect(got?.date).toBeInstanceOf(Date)
    expect(got?.headers.get('auto-submitted')).toBe('auto-generated')
    expect(got?.headers.get('content-type')).toMatchObject({ value: 'multipart/alternative' })
  })

  it('gives the same Message-ID to the same letter and another one to another', async () => {
    await send('one')
    await send('one')
    await send('two')
    const [one, again, two] = server.letters.map(({ messageId }) => messageId)
    expect(again).toBe(one)
    expect(two).not.toBe(one)
  })

  it.each([
    ['450', '4.2.1 mailbox busy', 'The mail server did not take the letter for now (450 4.2.1).'],
    ['421', 'closing', 'The mail server did not take the letter for now (421).'],
  ])('says to try again after %s', async (code, words, why) => {
    server.behave({ kind: 'refuse recipient', code: Number(code), words })
    expect(await send()).toEqual({ kind: 'later', why })
    expect(await send()).toEqual({ kind: 'sent' })
  })

  it.each(['refuse recipient', 'refuse letter'] as const)('says not to try again after 5xx (%s), and does not repeat the address', async (kind) => {
    server.behave({ kind, code: 550, words: '5.1.1 <ashdown@larkmoor.example> is not here' })
    expect(await send()).toEqual({ kind: 'never', why: 'The mail server refused the letter for good (550 5.1.1).' })
  })

  it('says to try again when the connection breaks in the middle of the letter', async () => {
    server.behave({ kind: 'drop in the letter' })
    expect(await send()).toEqual({ kind: 'later', why: 'The connection to the mail server was lost or could not be made.' })
    expect(server.letters).toEqual([])
  })

  it('says to try again when the connection breaks before the reply, though the server has the letter', async () => {
    server.behave({ kind: 'drop before the reply' })
    expect(await send()).toMatchObject({ kind: 'later' })
    expect(await send()).toEqual({ kind: 'sent' })
    const [one, again] = server.letters
    expect(again?.messageId).toBe(one?.messageId)
  })

  it('says to try again when there is no server', async () => {
    const { url } = server
    await server.close()
    expect(await send('x', url)).toMatchObject({ kind: 'later' })
    server = await openMailServer()
  })

  it('takes a refused sign-in for a fault of the settings, not of the letter', async () => {
    server.behave({ kind: 'refuse sign-in' })
    const url = server.url.replace('//', '//helpline:p%40ss@')
    expect(await send('x', url)).toEqual({ kind: 'later', why: 'The mail server refused our sign-in. Check FRONDLINE_SMTP_URL.' })
    expect(await send('x', url)).toEqual({ kind: 'sent' })
  })

  it('never sends a password over an open line to another machine', async () => {
    // 127.0.0.1 under another name, so that it does not count as this machine.
    const url = server.url.replace('//', '//helpline:secret@').replace('127.0.0.1', '0.0.0.0')
    expect(await send('x', url)).toEqual({ kind: 'later', why: 'No safe connection to the mail server could be made.' })
    expect(server.letters).toEqual([])
  })
})
