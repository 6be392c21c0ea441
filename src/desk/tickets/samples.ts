import type { RecordResult, SendSample, TicketView } from '../../../shared/index.js'
import { appendResult, appendSample, resultsOf, samplesOf } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { moveTicket } from './make-move.js'
import { showTicket } from './ticket-desk.js'
import { whyNot } from './ticket-moves.js'

/** Notes that a sample went to a laboratory, with its number and what was packed. The same number is sent once. */
export async function sendSample(room: Room, number: string, body: SendSample, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    const fault = whyNot('send sample', ticket, who)
    if (fault !== null) throw fault
    const known = (await samplesOf(db, ticket.id)).find((sample) => sample.number === body.number)
    if (known !== undefined) {
      if (known.packed === body.packed && ticket.state === 'sent as a sample') return null
      throw new DeskFault('SAMPLE_KNOWN', { words: { number: body.number } })
    }
    await appendSample(db, { ticket_id: ticket.id, at: room.now().toISOString(), person_id: who.id, ...body })
    return { move: 'send sample', happening: { kind: 'sample sent', number: body.number } }
  })
  return showTicket(room, number, who)
}

/**
 * Records a laboratory's result. A ticket that waited for it is with its specialist again; a settled one stays settled, to
 * be amended. A further result of the same sample is kept beside the first.
 */
export async function recordResult(room: Room, number: string, body: RecordResult, who: Member): Promise<TicketView> {
  await moveTicket(room, number, who, async (db, ticket) => {
    const fault = whyNot('record result', ticket, who)
    if (fault !== null) throw fault
    const samples = await samplesOf(db, ticket.id)
    if (!samples.some((sample) => sample.number === body.number)) throw new DeskFault('SAMPLE_NOT_FOUND', { words: { number: body.number } })
    const results = (await resultsOf(db, ticket.id)).filter((result) => result.number === body.number)
    if (results.at(-1)?.text === body.text) return null
    const at = room.now().toISOString()
    await appendResult(db, { ticket_id: ticket.id, at, person_id: who.id, ...body })
    return {
      move: 'record result', happening: { kind: 'result', number: body.number },
      sets: ticket.state === 'sent as a sample' ? { state: 'taken', waits_since: at } : {},
    }
  })
  return showTicket(room, number, who)
}
