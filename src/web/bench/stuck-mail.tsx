import { useEffect, useState } from 'preact/hooks'
import type { MailRow, MailView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import type { StaffService } from '../wire/staff-service.js'

/** A quiet line on letters that did not go out, with what came of the last try; nothing where all is well. */
export function StuckMail({ service }: { readonly service: StaffService }) {
  const [mail, setMail] = useState<MailView | null>(null)
  const [fault, setFault] = useState(false)
  useEffect(() => { void service.mail().then(reply => { if (reply.ok) setMail(reply.value) }) }, [])

  async function retry(row: MailRow): Promise<void> {
    const reply = await service.retryMail(row.mail)
    setFault(!reply.ok)
    if (reply.ok) setMail(reply.value)
  }
  if (mail === null) return null
  if (!mail.on) return <p class="ledger-note mail-line hint">Mail is not set up here: askers are not written to, and come back by their links.</p>
  if (mail.troubled.length === 0) return null
  const stuck = mail.troubled.filter(row => row.stuck).length
  return (
    <details class="ledger-note mail-line">
      <summary>{stuck > 0 ? `${counted(stuck)} stuck` : `${counted(mail.troubled.length)} not gone out yet`}</summary>
      {fault && <p class="fault" role="alert">That did not work. Please try again.</p>}
      <ul>
        {mail.troubled.map(row => (
          <li key={row.mail} class="kin-row">
            <span>{aboutWords[row.about]}{row.ticket !== null && <>, <a href={`#ticket/${row.ticket}`}>ticket {row.ticket}</a></>}</span>
            <span class="origin">{row.why} {row.nextAt !== null && `Next try ${momentInWords(row.nextAt)}.`}</span>
            <button type="button" class="quiet" aria-label={`Try again: ${aboutWords[row.about]} of ${momentInWords(row.madeAt)}`} onClick={() => void retry(row)}>Try again</button>
          </li>
        ))}
      </ul>
    </details>
  )
}

function counted(count: number): string {
  return count === 1 ? 'One letter is' : `${count} letters are`
}

const aboutWords: Readonly<Record<MailRow['about'], string>> = {
  'received': 'Letter that the ticket was received', 'asked back': 'Letter that asks back', 'answered': 'Letter with the answer',
  'urgent': 'Notice of an urgent ticket', 'invitation': 'Invitation',
}
