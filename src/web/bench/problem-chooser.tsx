import { useRef, useState } from 'preact/hooks'
import type { LikelyLine } from '../../../shared/index.js'
import { groupProblems, type ProblemRow } from './problem-groups.js'

interface ProblemChooserProps {
  readonly problems: readonly ProblemRow[]
  /** Plants to put first. */
  readonly plants: readonly string[]
  readonly differential: readonly LikelyLine[]
  /** The chosen problem, or '' for none yet. */
  readonly chosen: string
  readonly onChoose: (problem: string) => void
}

/** One problem chosen from all, by plant, the likely ones first; typing narrows and Enter takes the first that fits. */
export function ProblemChooser({ problems, plants, differential, chosen, onChoose }: ProblemChooserProps) {
  const [typed, setTyped] = useState('')
  const list = useRef<HTMLDivElement>(null)
  const { groups, hidden } = groupProblems(problems, { plants, differential, typed })
  const count = groups.reduce((sum, group) => sum + group.rows.length, 0)
  const shareOf = (problem: string) => differential.find(line => line.problem === problem)?.probability ?? null

  function press(event: KeyboardEvent): void {
    if (event.isComposing) return
    if (event.key === 'Enter' && !event.ctrlKey) {
      event.preventDefault()
      const first = groups[0]?.rows[0]
      if (typed.trim() !== '' && first !== undefined) { onChoose(first.problem); setTyped('') }
    }
    if (event.key === 'ArrowDown') {
      event.preventDefault()
      const radios = list.current
      ;(radios?.querySelector<HTMLInputElement>('input:checked') ?? radios?.querySelector<HTMLInputElement>('input'))?.focus()
    }
  }

  const now = problems.find(row => row.problem === chosen) ?? null
  return (
    <fieldset class="problem-chooser">
      <legend>Which problem</legend>
      <p class="chosen" role="status">{now === null ? 'None is chosen yet.' : <>Chosen: <b class="written">{now.name}</b> <span class="origin">{plantNames(now)}</span></>}</p>
      <div class="field short">
        <label for="problem-words">Type to narrow</label>
        <input
          id="problem-words" type="text" autocomplete="off" value={typed} aria-describedby="problem-words-hint"
          onInput={event => setTyped(event.currentTarget.value)} onKeyDown={press}
        />
        <p class="hint" id="problem-words-hint">A word of the problem or the plant. <kbd>Enter</kbd> takes the first, <kbd>↓</kbd> goes to the list.</p>
      </div>
      <div class="problem-groups" ref={list}>
        {groups.map(group => (
          <section key={group.title} aria-label={group.title}>
            <h4>{group.title}</h4>
            {group.rows.map(row => <ProblemLine key={row.problem} row={row} share={shareOf(row.problem)} chosen={row.problem === chosen} onChoose={onChoose} />)}
          </section>
        ))}
      </div>
      <p class="hint" role="status">{count === 0 ? 'No problem of the guide has these words.' : hidden > 0 ? `${hidden} more. Type ${typed === '' ? 'a word' : 'more'} to find them.` : ''}</p>
    </fieldset>
  )
}

function ProblemLine({ row, share, chosen, onChoose }: { readonly row: ProblemRow, readonly share: number | null, readonly chosen: boolean, readonly onChoose: (problem: string) => void }) {
  return (
    <label class={chosen ? 'problem-line picked' : 'problem-line'}>
      <input type="radio" name="problem" value={row.problem} checked={chosen} onChange={() => onChoose(row.problem)} />
      <span><span class="likely-name">{row.name}</span> <span class="origin">{row.what}</span></span>
      {share !== null && share >= SHARE_SHOWN_FROM && <span class="likely-share">{Math.min(99, Math.round(share * 100))} in 100</span>}
    </label>
  )
}

function plantNames({ plants }: ProblemRow): string {
  return plants.map(plant => plant.name).join(', ')
}

const SHARE_SHOWN_FROM = 0.01
