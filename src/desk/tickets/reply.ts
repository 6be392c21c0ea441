import type { z } from 'zod'
import { Reply, type SettleTicket } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import { DeskFault } from '../desk-fault.js'
import { problemNamed } from '../guide-names.js'

/** The specialist's word as it is kept. The problem's name is kept too: the guide may change it, the reply may not. */
export function replyText(guide: Guide, { text, outcome }: SettleTicket, at: string): string {
  const reply: z.infer<typeof Reply> = { text, ...decided(guide, outcome), at }
  return JSON.stringify(reply)
}

/** The kept reply. */
export function replyFromText(kept: string): z.infer<typeof Reply> {
  return Reply.parse(JSON.parse(kept))
}

/** A kept reply with the problem's name in the language of a view of the guide; in its own it keeps the name it was given. */
export function replyIn(guide: Guide, reply: z.infer<typeof Reply>): z.infer<typeof Reply> {
  if (reply.problem === null || guide.language === guide.region.language) return reply
  return { ...reply, problemName: problemNamed(guide, reply.problem)?.name ?? reply.problemName }
}

/** Whether a kept reply says what is to be settled now. */
export function saysTheSame(kept: string, { text, outcome }: SettleTicket): boolean {
  const reply = replyFromText(kept)
  return reply.text === text && reply.outcome === outcome.kind
    && reply.problem === (outcome.kind === 'problem' ? outcome.problem : null)
}

function decided(guide: Guide, outcome: SettleTicket['outcome']) {
  if (outcome.kind !== 'problem') return { problem: null, problemName: null, outcome: outcome.kind }
  const problem = problemNamed(guide, outcome.problem)
  if (problem === null) throw new DeskFault('UNKNOWN_PROBLEM', { words: { problem: outcome.problem } })
  return { problem: problem.id, problemName: problem.name, outcome: outcome.kind }
}
