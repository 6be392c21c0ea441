import type { CheckCard } from '../../../shared/index.js'
import { useWording } from '../wording/language.js'

/** Checks that would still tell, offered but not pressed. */
export function UnsettledChecks({ checks, onLookAt }: { readonly checks: readonly CheckCard[], readonly onLookAt: (check: CheckCard) => void }) {
  const words = useWording().handOver
  if (checks.length === 0) return null
  return (
    <section class="unsettled">
      <h4>{words.unsettled}</h4>
      <ul>{checks.map(check => (
        <li key={check.id}>
          <span>{check.ask}</span>
          <button type="button" class="quiet" aria-label={`${words.lookNow}: ${check.ask}`} onClick={() => onLookAt(check)}>{words.lookNow}</button>
        </li>
      ))}</ul>
    </section>
  )
}
