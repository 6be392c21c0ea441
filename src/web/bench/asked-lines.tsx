import type { TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'

/** What was asked back and what came of it, and the samples with their results. */
export function AskedLines({ view: { questions, samples } }: { readonly view: TicketView }) {
  if (questions.length === 0 && samples.length === 0) return null
  return (
    <>
      {questions.map(question => (
        <section class="step asked" key={question.at} aria-label="Asked back">
          <h3>Asked back <span class="origin">{question.by}, {momentInWords(question.at)}</span></h3>
          {question.text !== '' && <p class="letter">{question.text}</p>}
          <ul>
            {question.checks.map(({ check, answer, fresh }) => (
              <li key={check.id}>{check.ask} {answer === null ? <span class="origin">not answered yet</span> : <><span class="written">{answer}</span> <span class="origin">{fresh ? 'new since asked' : 'as before'}</span></>}</li>
            ))}
            {question.photos && <li>Photos are wanted.</li>}
          </ul>
          <p class="origin">{question.answered ? 'The asker has answered.' : 'The asker has not answered yet.'}</p>
        </section>
      ))}
      {samples.map(sample => (
        <section class="step asked" key={sample.at} aria-label={`Sample ${sample.number}`}>
          <h3>Sample {sample.number} <span class="origin">{sample.by}, {momentInWords(sample.at)}</span></h3>
          <p>Packed: {sample.packed}</p>
          {sample.result === null ? <p class="origin">No result yet.</p> : (
            <><h4>Result <span class="origin">{sample.result.by}, {momentInWords(sample.result.at)}</span></h4><p class="letter">{sample.result.text}</p></>
          )}
        </section>
      ))}
    </>
  )
}
