import type { CheckCard } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { Told } from './told.js'

interface UnsettledChecksProps {
  readonly checks: readonly CheckCard[]
  /** Address of the sheet, for a look that has to wait; null where it stands elsewhere on the screen. */
  readonly address?: string | null
  /** True where number keys open the checks. */
  readonly keyed?: boolean
  readonly onLookAt?: (check: CheckCard) => void
  /** Where the check is opened, on a page without script. */
  readonly lookAddress?: (check: CheckCard) => string
}

/** Checks that would still tell, offered but not pressed: those for now, then those that must wait a day. */
export function UnsettledChecks({ checks, address = null, keyed = false, onLookAt, lookAddress }: UnsettledChecksProps) {
  const words = useSheetWording().handOver
  const now = checks.filter(check => check.effort !== WAIT_A_DAY)
  const tomorrow = checks.filter(check => check.effort === WAIT_A_DAY)
  const row = (check: CheckCard, press: string) => (
    <li key={check.id}>
      <span><Told text={check.ask} /></span>
      {lookAddress !== undefined
        ? <a href={lookAddress(check)} aria-label={`${press}: ${check.ask}`}>{press}</a>
        : (
          <button type="button" class="quiet" aria-label={`${press}: ${check.ask}`} onClick={() => onLookAt?.(check)}>
            {press}{keyed && <kbd>{checks.indexOf(check) + 1}</kbd>}
          </button>
        )}
    </li>
  )
  return (
    <>
      {now.length > 0 && (
        <section class="unsettled">
          <h4>{words.unsettled}</h4>
          <ul>{now.map(check => row(check, words.lookNow))}</ul>
        </section>
      )}
      {tomorrow.length > 0 && (
        <section class="unsettled">
          <h4>{words.tomorrow}</h4>
          <p class="hint">{words.tomorrowHint} {address !== null && <a href={address}>{words.keepLink}</a>}</p>
          <ul>{tomorrow.map(check => row(check, words.haveLooked))}</ul>
        </section>
      )}
    </>
  )
}

/** The effort of a look that needs another day, as the guide spells it. */
const WAIT_A_DAY = 'wait a day'
