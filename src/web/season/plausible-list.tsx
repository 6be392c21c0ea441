import type { PlausibleTable } from '../../../shared/index.js'
import { inShort } from './numbers.js'

/** What the season moves in a district today, by how much, and why. */
export function PlausibleList({ table }: { readonly table: PlausibleTable }) {
  if (table.problems.length === 0) return <p>Nothing is moved: the guide’s own shares hold as they are.</p>
  return (
    <ul class="plausible">
      {table.problems.map(({ problem, name, moved }) => (
        <li key={problem}><b>{name}</b> <span class="factor">× {inShort(moved.factor)}</span> <span class="origin">{moved.words}</span></li>
      ))}
    </ul>
  )
}
