import { createTransport } from 'nodemailer'
import { html, type Letter, plainText } from './letter.js'
import { messageIdFor } from './message-id.js'
import { outcomeOfFault, type SendOutcome } from './send-outcome.js'

/** How mail is sent. */
export interface MailSettings {
  /** smtp://… or smtps://…, with the name and password where the server wants them. */
  readonly smtpUrl: string
  /** The sender's address. */
  readonly from: string
  /** Where the service is seen from outside, without a slash at the end: links in letters begin with it. */
  readonly publicUrl: string
  /** One letter may take so long, milliseconds; a minute when left out. */
  readonly longestMs?: number | undefined
}

/** Sends letters. */
export interface Mailer {
  /** No try takes longer than this, milliseconds. */
  readonly longestMs: number
  /**
   * Tries once to send a letter and says what came of it; never throws.
   * @param madeFrom what the letter was made from; the same text gives the same Message-ID
   */
  send(letter: Letter, madeFrom: string, sender: string): Promise<SendOutcome>
}

/** A silent server is given up after this long, in milliseconds. */
const CONNECT_MS = 15_000
const SILENCE_MS = 30_000
/** And a slow one after this long, where nothing else is set. */
const USUAL_LONGEST_MS = 60_000

/** A mailer for one SMTP server. One connection a letter: a helpline's letters are few, and no state is left between them. */
export function openMailer({ smtpUrl, from, longestMs = USUAL_LONGEST_MS }: Omit<MailSettings, 'publicUrl'>): Mailer {
  const url = new URL(smtpUrl)
  const transport = createTransport({
    host: url.hostname.replace(/^\[|\]$/g, ''), secure: url.protocol === 'smtps:',
    port: url.port === '' ? (url.protocol === 'smtps:' ? 465 : 587) : Number(url.port),
    // A password never goes over a line that others can read.
    ...(url.username === '' ? {} : {
      auth: { user: decodeURIComponent(url.username), pass: decodeURIComponent(url.password) },
      requireTLS: url.protocol !== 'smtps:' && !isOwnMachine(url.hostname),
    }),
    connectionTimeout: CONNECT_MS, greetingTimeout: CONNECT_MS, socketTimeout: SILENCE_MS,
    disableFileAccess: true, disableUrlAccess: true,
  })
  return {
    longestMs,
    async send(letter, madeFrom, sender) {
      const sending = transport.sendMail({
        from: { name: sender, address: from }, to: { name: '', address: letter.to }, subject: letter.subject,
        text: plainText(letter), html: html(letter), messageId: messageIdFor(madeFrom, from),
        // RFC 3834: answering machines leave it alone. RFC 3282: which language it is in.
        headers: { 'Auto-Submitted': 'auto-generated', 'Content-Language': letter.language ?? 'en' },
      }).then((): SendOutcome => ({ kind: 'sent' }), outcomeOfFault)
      return await withinTime(sending, longestMs)
    },
  }
}

function withinTime(sending: Promise<SendOutcome>, longestMs: number): Promise<SendOutcome> {
  return new Promise((resolve) => {
    const cutOff = setTimeout(() => {
      resolve({ kind: 'later', why: 'The mail server took too long.' })
    }, longestMs)
    void sending.then((outcome) => {
      clearTimeout(cutOff)
      resolve(outcome)
    })
  })
}

function isOwnMachine(host: string): boolean {
  return host === 'localhost' || host === '[::1]' || /^127\./.test(host)
}
