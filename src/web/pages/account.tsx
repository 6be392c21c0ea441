import { render } from 'preact'
import { useState } from 'preact/hooks'
import type { Me } from '../../../shared/index.js'
import { CodesCard } from '../people/codes-card.js'
import { PasswordForm } from '../people/password-form.js'
import { createStaffService } from '../wire/staff-service.js'
import { StaffFrame } from './staff-frame.js'
import './page.css'
import './bench.css'
import './people.css'

const service = createStaffService()

function AccountPage({ first }: { readonly first: Me }) {
  const [me, setMe] = useState(first)
  async function signOutEverywhere(): Promise<void> {
    const reply = await service.signOutEverywhere()
    if (reply.ok) location.replace('/sign-in')
  }
  return (
    <div class="accounts">
      <section class="sheet" aria-label="One-time codes"><CodesCard service={service} me={me} onMe={setMe} /></section>
      {me.codes !== 'to be set up' && <section class="sheet" aria-label="Password"><PasswordForm service={service} onMe={setMe} /></section>}
      <section class="sheet" aria-label="Signing out">
        <div class="step">
          <h2 class="step-title">Sign out everywhere</h2>
          <p>Ends every session of yours, this one too. Do it when a phone or a computer is lost.</p>
          <p><button type="button" class="second" onClick={() => void signOutEverywhere()}>Sign out everywhere</button></p>
        </div>
      </section>
    </div>
  )
}

const page = document.querySelector('#page')
if (page !== null) {
  render(
    <StaffFrame service={service} title="My account" here="/account" roles={['volunteer', 'specialist', 'administrator']}>
      {person => <AccountPage first={person} />}
    </StaffFrame>, page)
}
