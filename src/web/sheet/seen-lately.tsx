import { useEffect, useState } from 'preact/hooks'
import type { SeeingList, SeeingNote } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'

/** The last note that everyone may read, where it is of this week or the last one. */
export interface LateNote {
  readonly note: SeeingNote
  readonly isThisWeek: boolean
}

const DAY_MS = 86_400_000

/**
 * The newest note, or null when it is older than last week's: what was seen then says little of a caller's plant today.
 * @param today ISO date
 */
export function lateNote(notes: SeeingList['notes'], today: string): LateNote | null {
  const [note] = notes
  if (note === undefined) return null
  const days = (Date.parse(today) - Date.parse(note.monday)) / DAY_MS
  return days >= 0 && days < 14 ? { note, isThisWeek: days < 7 } : null
}

/** Fetches the note once; null without one, and while there is no call to begin. */
export function useLateNote(service: Pick<StaffService, 'seeing'>, wanted: boolean): LateNote | null {
  const [late, setLate] = useState<LateNote | null>(null)
  useEffect(() => {
    let here = true
    if (wanted) void service.seeing().then(reply => { if (here && reply.ok) setLate(lateNote(reply.value.notes, new Date().toISOString().slice(0, 10))) })
    return () => { here = false }
  }, [service, wanted])
  return wanted ? late : null
}

/** What the key says, on the sheet and in the list of keys. */
export function seenWords({ isThisWeek }: LateNote): string {
  return isThisWeek ? 'What we are seeing this week' : 'What we saw last week'
}

interface SeenLatelyProps {
  readonly late: LateNote
  readonly open: boolean
  readonly onTurn: () => void
}

/** The published note, below a blank sheet: what callers are likely to ring about. Quiet until it is asked for. */
export function SeenLately({ late, open, onTurn }: SeenLatelyProps) {
  const { lead, problems } = late.note
  return (
    <section class="step seen-lately" aria-label={seenWords(late)}>
      <p><button type="button" class="quiet" aria-expanded={open} aria-controls="seen-lately-note" onClick={onTurn}>{seenWords(late)}<kbd>{SEEN_KEY}</kbd></button></p>
      <div id="seen-lately-note" hidden={!open}>
        <p>{lead}</p>
        <dl>{problems.map(({ problem, name, text }) => <div key={problem}><dt>{name}</dt><dd>{text}</dd></div>)}</dl>
        <p class="hint">Anyone can read this at <a href="/seeing" target="_blank">/seeing</a> (opens beside this sheet). A caller’s plant may still have something else.</p>
      </div>
    </section>
  )
}

/** Opens and closes it. */
export const SEEN_KEY = 'S'
