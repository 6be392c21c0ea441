import { render } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { InvitationView } from '../../../shared/index.js'
import { AccountForm } from '../people/account-form.js'
import { inWords } from '../wording/in-words.js'
import { NewPassword, passwordFault } from '../people/new-password.js'
import { createStaffService } from '../wire/staff-service.js'
import { dayInWords } from '../wording/day.js'
import './page.css'
import './people.css'

const service = createStaffService()
/** Behind '#', where no server's log sees it. */
const token = location.hash.slice(1)

function JoinPage() {
  const [invited, setInvited] = useState<InvitationView | null>(null)
  const [next, setNext] = useState('')
  const [again, setAgain] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const [sending, setSending] = useState(false)

  useEffect(() => {
    if (!/^[A-Za-z0-9_-]{43}$/.test(token)) { setFault('This invitation link is cut short. Copy the whole link, or ask for a new one.'); return }
    void service.lookAtInvitation(token).then(reply => { setFault(inWords(reply)); if (reply.ok) setInvited(reply.value) })
  }, [])

  async function join(): Promise<void> {
    const found = passwordFault(next, again)
    setFault(found)
    if (found !== null) return
    setSending(true)
    const reply = await service.join({ token, password: next })
    setSending(false)
    setFault(inWords(reply))
    if (reply.ok) location.replace(reply.value.codes === 'to be set up' ? '/account' : reply.value.role === 'volunteer' ? '/sheet' : '/bench')
  }
  return (
    <main class="page narrow">
      <div class="sheet">
        {invited === null
          ? <div class="step"><h1 class="step-title">Your invitation</h1>{fault === null ? <p>Looking at it …</p> : <p class="fault" role="alert">{fault}</p>}</div>
          : (
            <AccountForm title={`Welcome, ${invited.name}`} submit="Make my account" sending={sending} fault={fault} onSubmit={() => void join()}>
              <p>You are invited as a {invited.role}, until {dayInWords(invited.expiresAt)}. Your name to sign in with is <b>{invited.name}</b>. Choose a password.</p>
              <NewPassword next={next} again={again} onNext={setNext} onAgain={setAgain} />
            </AccountForm>
          )}
      </div>
    </main>
  )
}

const page = document.querySelector('#page')
if (page !== null) render(<JoinPage />, page)
