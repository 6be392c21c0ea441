import type { CaseView, CheckCard } from '../../../shared/index.js'

/** The card of a check that is open, filled in or asked back on a sheet; null where it is not there. */
export function checkIn(view: CaseView | null, check: string): CheckCard | null {
  if (view === null) return null
  const { step, lines, ticket } = view
  const shown = [
    ...(step.kind === 'ask' ? [step.check] : step.kind === 'conclude' ? step.turns.map(turn => turn.check) : step.kind === 'hand-over' ? step.unsettled : []),
    ...lines.map(line => line.check), ...(ticket?.askedBack?.checks.map(asked => asked.check) ?? []),
  ]
  return shown.find(card => card.id === check) ?? null
}
