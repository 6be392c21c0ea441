import type { CaseView, CheckCard } from '../../../shared/index.js'
import { CANT_LOOK, NOT_SURE } from '../case/told.js'

export interface OfferedCheck {
  readonly check: CheckCard
  /** Why it stands where it stands; empty for the rest of the plant's checks. */
  readonly why: string
}

/**
 * The checks worth asking back: those that would tell most first, as the case says itself, then those asked without an
 * answer, then the plant's others. Answered ones stand last with their answer: they can be asked once more.
 */
export function checksInOrder(view: Pick<CaseView, 'step' | 'lines'>, ofPlant: readonly CheckCard[]): readonly OfferedCheck[] {
  const offered = new Map<string, OfferedCheck>()
  const offer = (check: CheckCard, why: string) => { if (!offered.has(check.id)) offered.set(check.id, { check, why }) }
  const { step } = view

  const answered = view.lines.filter(line => line.answer !== NOT_SURE && line.answer !== CANT_LOOK)
  const isAnswered = (check: CheckCard) => answered.some(line => line.check.id === check.id)
  if (step.kind === 'hand-over') for (const check of step.unsettled) offer(check, 'would tell most')
  if (step.kind === 'ask') offer(step.check, 'is open on their sheet')
  if (step.kind === 'conclude') for (const turn of step.turns) if (!isAnswered(turn.check)) offer(turn.check, 'could change the answer')
  for (const line of view.lines) if (!isAnswered(line.check)) offer(line.check, `they said “${line.answer}”`)
  // What only a laboratory can see is sent as a sample, not asked.
  for (const check of ofPlant) if (!isAnswered(check) && check.effort !== SEND_A_SAMPLE) offer(check, '')
  for (const line of answered) offer(line.check, `answered: ${line.answer}`)
  return [...offered.values()]
}

/** The effort of a check that a laboratory makes, as the guide spells it. */
const SEND_A_SAMPLE = 'send a sample'
