import { useEffect, useState } from 'preact/hooks'
import type { RegionView, SimilarCase, SimilarCases } from '../../../shared/index.js'
import type { StaffService } from '../wire/staff-service.js'
import { dayInWords } from '../wording/day.js'

interface SimilarSettledProps {
  readonly service: Pick<StaffService, 'similarCases'>
  readonly link: string
  /** Looked up anew when the case moves on. */
  readonly revision: number
  readonly region: RegionView | null
}

/** Settled cases of this season like the one at hand; nothing while there are none. What cannot be fetched is left out: it is a hint. */
export function SimilarSettled({ service, link, revision, region }: SimilarSettledProps) {
  const [found, setFound] = useState<SimilarCases | null>(null)
  useEffect(() => {
    let here = true
    void service.similarCases(link).then(reply => { if (here && reply.ok) setFound(reply.value) })
    return () => { here = false }
  }, [service, link, revision])
  if (found === null || found.cases.length === 0) return null
  const district = region?.districts.find(row => row.district === found.district)?.name ?? found.district
  return (
    <section class="step similar" aria-label="Settled this season">
      <h3>Settled this season{district === null ? '' : ` in ${district}`}: {found.hostName}</h3>
      <ul>{found.cases.map((one, place) => <SimilarLine key={place} one={one} />)}</ul>
      {found.more > 0 && <p class="hint">And {found.more} more since {dayInWords(found.since)}.</p>}
    </section>
  )
}

function SimilarLine({ one }: { readonly one: SimilarCase }) {
  return (
    <li>
      <b>{one.problemName ?? (one.outcome === 'not known' ? 'Not known' : 'Not a plant problem')}</b>
      {' '}<span class="origin">{dayInWords(one.askedOn)}, {alike(one)}</span>
      {one.ticket !== null && <> <a href={`/bench#ticket/${one.ticket}`}>Ticket {one.ticket}</a></>}
      {one.same.length > 0 && <span class="similar-same">{one.same.map(({ ask, answer }) => <span key={ask} title={ask} class="written">{answer}</span>)}</span>}
    </li>
  )
}

/** "3 answers the same, 1 different". */
export function alike({ same, different }: Pick<SimilarCase, 'same' | 'different'>): string {
  const answers = (count: number) => (count === 1 ? '1 answer' : `${count} answers`)
  if (same.length === 0 && different === 0) return 'no answers to compare'
  if (different === 0) return `${answers(same.length)} the same`
  if (same.length === 0) return `${answers(different)} different`
  return `${answers(same.length)} the same, ${different} different`
}
