import type { LabSample } from '../../../shared/index.js'
import { type Db, resultsOf, samplesOf } from '../../store/index.js'

/** The samples of a ticket, each with the last result. */
export async function sampleViews(db: Db, ticketId: number): Promise<LabSample[]> {
  const results = await resultsOf(db, ticketId)
  return (await samplesOf(db, ticketId)).map(({ number, packed, at, by }) => {
    const result = results.filter((one) => one.number === number).at(-1)
    return { number, packed, at, by, result: result === undefined ? null : { text: result.text, at: result.at, by: result.by } }
  })
}
