import { render } from 'preact'
import { SeasonSheet } from '../season/season-sheet.js'
import { createSeasonService } from '../wire/season-service.js'
import { createSender } from '../wire/sender.js'
import { createStaffService } from '../wire/staff-service.js'
import { StaffFrame } from './staff-frame.js'
import './page.css'
import './sheet.css'
import './bench.css'
import './season.css'

const service = createStaffService()
const season = createSeasonService(createSender({ base: '', credentials: 'same-origin' }))

const page = document.querySelector('#page')
if (page !== null) {
  render(
    <StaffFrame service={service} title="Season" here="/season" roles={['volunteer', 'specialist', 'administrator']}>
      {(person, region) => region === null ? <p>Fetching …</p> : <SeasonSheet service={season} region={region} mayWrite={person.role !== 'volunteer'} />}
    </StaffFrame>, page)
}
