import type { AdviceCard } from '../../../shared/index.js'

/** Some mail programs cut an address that is longer, in characters; the list of what to do is cut before them, the link never. */
const LONGEST_ADDRESS = 1900

interface AdviceLetter {
  readonly card: Pick<AdviceCard, 'name' | 'bottomLine' | 'escalate' | 'cautions' | 'doNow'>
  /** Name of the helpline. */
  readonly helpline: string
  /** The caller's private link, where the whole sheet stands. */
  readonly link: string
}

/**
 * The advice as a letter in the helpline's own mail program (a `mailto:` address, RFC 6068), for the volunteer to read over
 * and send: bottom line, what must be reported, cautions, what to do now, and the link to the rest. Nothing of the
 * caller stands in the subject.
 */
export function adviceLetterAddress({ card, helpline, link }: AdviceLetter): string {
  const begin = [card.name, card.bottomLine, ...(card.escalate === null ? [] : [card.escalate]), ...listed('Take care', card.cautions)]
  const end = [`The whole sheet, with why we think so: ${link}`, 'Whoever has this link can read the sheet.', helpline]
  const addressWith = (count: number): string => {
    const body = [...begin, ...listed('Do now', card.doNow.slice(0, count)), ...end].join('\r\n\r\n')
    return `mailto:?subject=${encodeURIComponent(`Your plant question to ${helpline}`)}&body=${encodeURIComponent(body)}`
  }
  let count = card.doNow.length
  while (count > 0 && addressWith(count).length > LONGEST_ADDRESS) count--
  return addressWith(count)
}

function listed(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [[title, ...lines.map((line) => `- ${line}`)].join('\r\n')]
}
