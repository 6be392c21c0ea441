import { render } from 'preact'
import { PeopleSheet } from '../people/people-sheet.js'
import { SettingsForm } from '../people/settings-form.js'
import { createStaffService } from '../wire/staff-service.js'
import { StaffFrame } from './staff-frame.js'
import './page.css'
import './bench.css'
import './people.css'

const service = createStaffService()

const page = document.querySelector('#page')
if (page !== null) {
  render(
    <StaffFrame service={service} title="People" here="/people" roles={['administrator']}>
      {person => (
        <div class="accounts">
          <PeopleSheet service={service} me={person.name} />
          <section class="sheet" aria-label="Settings"><SettingsForm service={service} /></section>
        </div>
      )}
    </StaffFrame>, page)
}
