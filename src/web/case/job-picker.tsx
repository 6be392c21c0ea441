import type { CaseService } from '../wire/case-service.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { Told, UntranslatedProvider } from './told.js'
import { useRows } from './use-rows.js'

interface JobPickerProps {
  readonly service: CaseService
  readonly disabled: boolean
  readonly onPick: (host: string, node: null) => void
  /** None of the jobs fits: the question is for a person. */
  readonly onSpecialist: () => void
  readonly onLeave: () => void
}

/** The jobs in the garden, for an asker with nothing sick to look into; a person, where the guide has none. */
export function JobPicker({ service, disabled, onPick, onSpecialist, onLeave }: JobPickerProps) {
  const { place: words, picker } = useSheetWording()
  const hosts = useRows('hosts', (_key, signal) => service.hosts(signal))
  if (hosts.kind === 'fetching') return <p class="hint">{picker.loading}</p>
  if (hosts.kind === 'failed') return <p>{picker.failed} <button type="button" class="quiet" onClick={hosts.again}>{picker.again}</button></p>
  const jobs = hosts.kind === 'here' ? hosts.value.hosts.filter(row => row.job === true) : []
  return (
    <UntranslatedProvider value={new Set(hosts.kind === 'here' ? hosts.value.untranslated ?? [] : [])}><div class="picker">
      <ul class="picks">
        {jobs.map(row => (
          <li key={row.host}><button type="button" class="answer" aria-disabled={disabled} onClick={() => onPick(row.host, null)}><Told text={row.name} /></button></li>
        ))}
        <li><button type="button" class="answer" aria-disabled={disabled} onClick={onSpecialist}>{words.noneOfThese}</button></li>
      </ul>
      <p class="row"><button type="button" class="quiet" onClick={onLeave}>{words.back}</button></p>
    </div></UntranslatedProvider>
  )
}
