import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { ComplaintRow, HostRow } from './row-types.js'
import type { CaseService } from '../wire/case-service.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { bestFitting } from './best-fitting.js'
import { Told, UntranslatedProvider } from './told.js'
import { UNKNOWN_PLANT } from './unknown-plant.js'
import { useRows } from './use-rows.js'

interface PlantPickerProps {
  readonly service: CaseService
  readonly disabled: boolean
  /** A plant already known, so that only the complaint is left to pick. */
  readonly startAt: string | null
  readonly onPick: (host: string, node: string | null) => void
  readonly leaveWords: string
  readonly onLeave?: (() => void) | undefined
}

/** Plant and complaint picked by typing: first the plant, then what is wrong with it. */
export function PlantPicker({ service, disabled, startAt, onPick, leaveWords, onLeave }: PlantPickerProps) {
  const wording = useSheetWording()
  const words = wording.picker
  const hosts = useRows('hosts', (_key, signal) => service.hosts(signal))
  const [host, setHost] = useState<string | null>(startAt)
  const complaints = useRows(host, (key, signal) => service.complaints(key, signal))
  const [typed, setTyped] = useState('')
  const field = useRef<HTMLInputElement>(null)

  // The picker opens by the asker's own press, so the field may take the focus.
  useLayoutEffect(() => field.current?.focus(), [host, hosts.kind, host === null ? '' : complaints.kind])

  const rows = hosts.kind === 'here' ? hosts.value.hosts : []
  // Enter takes the first line: quicker than reaching for it, and the only way on for people without a pointer.
  const takeFirst = (event: KeyboardEvent, take: (() => void) | null) => {
    if (event.key !== 'Enter' || event.isComposing || typed.trim() === '' || take === null || disabled) return
    event.preventDefault()
    take()
  }
  // A job is asked for by its own first question: there is nothing wrong that could be picked.
  const choose = (next: string | null) => {
    if (next !== null && rows.some(row => row.host === next && row.job === true)) return onPick(next, null)
    setTyped('')
    setHost(next)
  }
  const waiting = host === null ? hosts : complaints
  if (waiting.kind === 'fetching' || hosts.kind === 'fetching') return <p class="hint">{words.loading}</p>
  if (waiting.kind === 'failed') {
    return <p>{words.failed} <button type="button" class="quiet" onClick={waiting.again}>{words.again}</button></p>
  }

  const untranslated = new Set([...hosts.kind === 'here' ? hosts.value.untranslated ?? [] : [], ...complaints.kind === 'here' ? complaints.value.untranslated ?? [] : []])
  const chosen = rows.find(row => row.host === host) ?? null
  if (host !== null && complaints.kind === 'here') {
    const fitting = bestFitting(complaints.value.complaints, complaintNames, typed)
    const [first] = fitting.shown
    return (
      <UntranslatedProvider value={untranslated}><div class="picker">
        <label>
          <span>{words.complaint(chosen?.name.toLowerCase() ?? host)}</span>
          <input
            ref={field} type="text" autocomplete="off" value={typed} onInput={event => setTyped(event.currentTarget.value)}
            onKeyDown={event => takeFirst(event, first === undefined ? null : () => onPick(host, first.node))}
          />
          <span class="hint">{words.complaintHint}</span>
        </label>
        <ul class="picks">
          {fitting.shown.map(row => (
            <li key={row.node}><button type="button" class="answer" aria-disabled={disabled} onClick={() => onPick(host, row.node)}><Told text={row.phrases[0] ?? row.node} /></button></li>
          ))}
          <li><button type="button" class="answer" aria-disabled={disabled} onClick={() => onPick(host, null)}>{words.anything}</button></li>
        </ul>
        {fitting.hidden > 0 && <p class="hint">{words.more(fitting.hidden)}</p>}
        <p class="row"><button type="button" class="quiet" onClick={() => choose(null)}>{words.otherPlant}</button>{leave()}</p>
      </div></UntranslatedProvider>
    )
  }

  const fitting = bestFitting(rows, hostNames, typed)
  const [first] = fitting.shown
  const count = fitting.shown.length + fitting.hidden
  return (
    <UntranslatedProvider value={untranslated}><div class="picker">
      <label>
        <span>{words.plant}</span>
        <input
          ref={field} type="text" autocomplete="off" value={typed} onInput={event => setTyped(event.currentTarget.value)}
          onKeyDown={event => takeFirst(event, first === undefined ? null : () => choose(first.host))}
        />
        <span class="hint">{words.plantHint}</span>
      </label>
      <p class="hint" role="status">{typed === '' ? '' : words.found(count)} {count === 0 && words.none}</p>
      <ul class="picks short">
        {fitting.shown.map(row => (
          <li key={row.host}><button type="button" class="answer" aria-disabled={disabled} onClick={() => choose(row.host)}><Told text={row.name} /></button></li>
        ))}
      </ul>
      {fitting.hidden > 0 && <p class="hint">{words.more(fitting.hidden)}</p>}
      <p class="row">
        {rows.some(row => row.host === UNKNOWN_PLANT) && !fitting.shown.some(row => row.host === UNKNOWN_PLANT) && (
          <button type="button" class="quiet" aria-disabled={disabled} onClick={() => choose(UNKNOWN_PLANT)}>{wording.place.unknown}</button>
        )}
        {leave()}
      </p>
    </div></UntranslatedProvider>
  )

  function leave() {
    return onLeave === undefined ? null : <button type="button" class="quiet" onClick={onLeave}>{leaveWords}</button>
  }
}

const hostNames = (row: HostRow): readonly string[] => [row.name, ...row.called]
const complaintNames = (row: ComplaintRow): readonly string[] => row.phrases
