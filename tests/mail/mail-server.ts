import { type AddressInfo } from 'node:net'
import { type ParsedMail, simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

/** What the server does with the next letter. */
export type Manners =
  | { readonly kind: 'take' }
  /** Refuses the recipient with this reply. */
  | { readonly kind: 'refuse recipient'; readonly code: number; readonly words: string }
  /** Takes the whole letter and then refuses it. */
  | { readonly kind: 'refuse letter'; readonly code: number; readonly words: string }
  /** Breaks the connection in the middle of the letter. */
  | { readonly kind: 'drop in the letter' }
  /** Takes the letter, and breaks the connection before saying so. */
  | { readonly kind: 'drop before the reply' }
  /** Refuses the name and password. */
  | { readonly kind: 'refuse sign-in' }

/** A real SMTP server on this machine, with bad manners when told so. */
export interface MailServer {
  readonly url: string
  /** Every letter that came to its end, taken or not, in order. */
  readonly letters: ParsedMail[]
  /** How often somebody connected. */
  connections(): number
  /** Manners for the next letters, in order; after them letters are taken. */
  behave(...manners: readonly Manners[]): void
  close(): Promise<void>
}

export async function openMailServer(port = 0): Promise<MailServer> {
  const letters: ParsedMail[] = []
  const queue: Manners[] = []
  let now: Manners = { kind: 'take' }
  let connections = 0
  const server = new SMTPServer({
    authOptional: true, disabledCommands: ['STARTTLS'], allowInsecureAuth: true, logger: false,
    onConnect(_session, callback) {
      connections++
      now = queue.shift() ?? { kind: 'take' }
      callback()
    },
    onAuth(_auth, _session, callback) {
      if (now.kind === 'refuse sign-in') callback(reply(535, '5.7.8 wrong name or password'))
      else callback(null, { user: 'helpline' })
    },
    onRcptTo(_address, _session, callback) {
      callback(now.kind === 'refuse recipient' ? reply(now.code, now.words) : null)
    },
    onData(stream, _session, callback) {
      if (now.kind === 'drop in the letter') {
        stream.once('data', dropAll)
        return
      }
      const manners = now
      simpleParser(stream).then((letter) => {
        letters.push(letter)
        if (manners.kind === 'drop before the reply') dropAll()
        else callback(manners.kind === 'refuse letter' ? reply(manners.code, manners.words) : null)
      }, (fault: unknown) => { callback(fault instanceof Error ? fault : new Error('unreadable')) })
    },
  })
  const dropAll = (): void => {
    // Not in its types: the open connections with their sockets.
    for (const { _socket } of (server as unknown as { connections: Set<{ _socket: { destroy(): void } }> }).connections) _socket.destroy()
  }
  server.on('error', () => undefined)
  await new Promise<void>((resolve) => { server.listen(port, '127.0.0.1', resolve) })
  const { port: opened } = server.server.address() as AddressInfo
  return {
    url: `smtp://127.0.0.1:${opened}`, letters, connections: () => connections,
    behave: (...manners) => void queue.push(...manners),
    close: () => new Promise((resolve) => { server.close(resolve) }),
  }
}

function reply(responseCode: number, words: string): Error {
  return Object.assign(new Error(words), { responseCode })
}
