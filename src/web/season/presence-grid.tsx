import { useState } from 'preact/hooks'
import type { PresenceRow, PresenceState, PresenceTable, SetPresence } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'

/** Each state with a mark that reads without colour: the fuller, the further it has come. */
export const presenceMarks: Readonly<Record<PresenceState, string>> = { 'not found': '○', 'found nearby': '◔', 'present': '◑', 'widespread': '●' }
const states = Object.keys(presenceMarks) as PresenceState[]

interface PresenceGridProps {
  readonly table: PresenceTable
  /** False for those who may only look. */
  readonly mayWrite: boolean
  readonly sending: boolean
  readonly fault: string | null
  readonly onSet: (body: SetPresence) => Promise<boolean>
}

/** Every watch problem in every district: how far it has come, what was said of it, and by whom. */
export function PresenceGrid({ table, mayWrite, sending, fault, onSet }: PresenceGridProps) {
  const [open, setOpen] = useState<{ readonly problem: string, readonly district: string } | null>(null)
  const saidOf = new Set(table.rows.filter(({ history }) => history.length > 0).map(({ problem }) => problem))
  // Those that something was said of first: the list is long, and most of it is quiet.
  const problems = [...new Map(table.rows.map(row => [row.problem, row.name]))].sort(([a], [b]) => Number(saidOf.has(b)) - Number(saidOf.has(a)))
  const districts = [...new Map(table.rows.map(row => [row.district, row.districtName]))]
  const rowOf = (problem: string, district: string) => table.rows.find(row => row.problem === problem && row.district === district)
  const chosen = open === null ? undefined : rowOf(open.problem, open.district)
  return (
    <>
      <p class="hint">{states.map(state => `${presenceMarks[state]} ${state}`).join(', ')}, – nothing said. {mayWrite ? 'Press a place to read what was said, or to say more.' : 'Press a place to read what was said.'}</p>
      <div class="numbers whole" tabIndex={0} role="region" aria-label="Watch problems by district">
        <table class="presence">
          <thead><tr><th scope="col">problem</th>{districts.map(([id, name]) => <th key={id} scope="col">{name}</th>)}</tr></thead>
          <tbody>
            {problems.map(([problem, name]) => (
              <tr key={problem}>
                <th scope="row">{name}</th>
                {districts.map(([district, districtName]) => {
                  const row = rowOf(problem, district)
                  const isOpen = open?.problem === problem && open.district === district
                  return (
                    <td key={district}>
                      <button type="button" class="second" aria-expanded={isOpen} aria-label={`${name} in ${districtName}: ${row?.state ?? 'nothing said'}`} onClick={() => setOpen(isOpen ? null : { problem, district })}>
                        {row?.state == null ? '–' : `${presenceMarks[row.state]} ${row.state}`}
                      </button>
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {chosen !== undefined && (
        <PresenceWords key={`${chosen.problem}/${chosen.district}`} row={chosen} mayWrite={mayWrite} sending={sending} fault={fault} onLeave={() => setOpen(null)} onSet={onSet} />
      )}
    </>
  )
}

interface PresenceWordsProps extends Omit<PresenceGridProps, 'table'> {
  readonly row: PresenceRow
  readonly onLeave: () => void
}

function PresenceWords({ row, mayWrite, sending, fault, onLeave, onSet }: PresenceWordsProps) {
  const [state, setState] = useState<PresenceState>(row.state ?? 'not found')
  const [why, setWhy] = useState('')
  const [on, setOn] = useState('')
  const [missing, setMissing] = useState(false)
  async function keep(event: Event): Promise<void> {
    event.preventDefault()
    if (why.trim() === '') { setMissing(true); return }
    setMissing(false)
    if (await onSet({ problem: row.problem, district: row.district, state, why: why.trim(), ...(on === '' ? {} : { on }) })) setWhy('')
  }
  return (
    <div class="presence-words">
      <h3>{row.name} in {row.districtName}</h3>
      {row.besideName !== null && <p>It counts as found nearby, since it was found in {row.besideName}.</p>}
      {row.history.length === 0 && <p>Nothing has been said yet.</p>}
      <ol>
        {row.history.map((word, place) => (
          <li key={place}><b>{presenceMarks[word.state]} {word.state}</b> from {dayInWords(word.on)}: <span class="written">{word.why}</span> <span class="origin">{word.by}, {dayInWords(word.at)}</span></li>
        ))}
      </ol>
      {mayWrite && (
        <form onSubmit={event => void keep(event)} noValidate>
          <fieldset class="outcomes">
            <legend>How does it stand?</legend>
            {states.map(one => <label key={one}><input type="radio" name="presence-state" checked={one === state} onChange={() => setState(one)} /> {presenceMarks[one]} {one}</label>)}
          </fieldset>
          <div class="field">
            <label for="presence-why">Why? <span class="hint">for colleagues: what was found, where, by whom told</span></label>
            <textarea id="presence-why" rows={2} maxLength={1000} value={why} aria-invalid={missing} aria-describedby={missing ? 'presence-why-fault' : undefined} onInput={event => setWhy(event.currentTarget.value)} />
            {missing && <p class="fault" id="presence-why-fault">Please say why: a colleague must be able to follow it.</p>}
          </div>
          <div class="field short">
            <label for="presence-on">From which day on? <span class="hint">today, when left empty</span></label>
            <input id="presence-on" type="date" value={on} onInput={event => setOn(event.currentTarget.value)} />
          </div>
          {fault !== null && <p class="fault" role="alert">{fault}</p>}
          <p class="row">
            <button type="submit" class="main" aria-disabled={sending}>Write it down</button>
            <button type="button" class="quiet" onClick={onLeave}>Leave it as it is</button>
          </p>
          <p class="hint">What was said before stays in the record. New cases are weighed by the new word; open ones keep what they had.</p>
        </form>
      )}
      {!mayWrite && <p><button type="button" class="quiet" onClick={onLeave}>Close</button></p>}
    </div>
  )
}
