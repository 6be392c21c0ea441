import { useEffect, useState } from 'preact/hooks'
import type { MailRow, MailView } from '../../../shared/index.js'
import type { MailService } from '../wire/mail-service.js'

/** How often the letters are looked at again, in milliseconds. */
const LOOK_MS = 60_000

/** Letters that did not go out, below the bench; nothing while all is well. */
export function MailNotes({ service }: { readonly service: MailService }) {
  const [view, setView] = useState<MailView | null>(null)
  useEffect(() => {
    const look = () => {
      if (document.visibilityState === 'visible') void service.mail().then(reply => { if (reply.ok) setView(reply.value) })
    }
    look()
    const timer = setInterval(look, LOOK_MS)
    return () => clearInterval(timer)
  }, [service])
  if (view === null) return null
  return <MailLines view={view} onRetry={mail => void service.retryMail(mail).then(reply => { if (reply.ok) setView(reply.value) })} />
}

/** What there is to say about the letters of the service. */
export function MailLines({ view, onRetry }: { readonly view: MailView, readonly onRetry: (mail: string) => void }) {
  if (!view.on) {
    return (
      <p class="mail-notes hint">
        This service sends no mail. Askers see your answer when they come back by their private link.
      </p>
    )
  }
  if (view.troubled.length === 0) return null
  return (
    <section class="mail-notes" aria-labelledby="mail-notes">
      <h2 id="mail-notes">Mail that did not go out</h2>
      <ul>
        {view.troubled.map(row => (
          <li key={row.mail}>
            <p>{aboutInWords(row)} {row.why} {row.nextAt === null ? 'It is not tried any more.' : 'It is tried again by itself.'}</p>
            <p><button type="button" aria-label={`Try again now: ${aboutInWords(row)}`} onClick={() => onRetry(row.mail)}>Try again now</button></p>
          </li>
        ))}
      </ul>
    </section>
  )
}

function aboutInWords({ about, ticket }: MailRow): string {
  if (about === 'invitation') return 'An invitation.'
  const of = ticket === null ? '' : ` of ticket ${ticket}`
  switch (about) {
    case 'received': return `To the asker${of}, that it has arrived.`
    case 'asked back': return `To the asker${of}, that more is asked.`
    case 'answered': return `To the asker${of}, with the answer.`
    case 'first report': return 'To whoever is on duty: the first report of a watch problem.'
    case 'urgent': return `To whoever is on duty: ticket ${ticket ?? ''} is urgent.`
  }
}
