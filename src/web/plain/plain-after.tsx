import { LONGEST_WORDS } from '../case/longest-words.js'
import { Told, ToldAnswer } from '../case/told.js'
import { dayInWords } from '../wording/day.js'
import { useSpoken } from '../wording/language.js'
import { usePlainWording } from '../wording/plain-language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { NOW, plainAddress, type CasePage } from './page.js'
import { PlainField, PlainForm } from './plain-form.js'
import { PlainPhotos } from './plain-hand-over.js'

/** What stands on the sheet once a specialist has it: what they ask, when to expect an answer, the way back, then the answer. */
export function PlainAfter({ page }: { readonly page: CasePage }) {
  const { view, region, address, typed, fault } = page
  const { after: words, askedBack } = useSheetWording()
  const plain = usePlainWording()
  const { language } = useSpoken()
  const { ticket } = view
  if (ticket === null) return null
  if (ticket.reply !== null) {
    const { reply } = ticket
    return (
      <div class="step reply" id={NOW}>
        <p class="kicker">{words.answered}</p>
        <h2 class="step-title">{words.outcome[reply.outcome](reply.problemName)}</h2>
        <div class="letter">{reply.text.split(/\n{2,}/).map((paragraph, n) => <p key={n}>{paragraph}</p>)}</div>
        <p class="hint">{words.answeredOn(dayInWords(reply.at, language))}</p>
        <PlainLink address={address} />
      </div>
    )
  }
  const question = ticket.askedBack
  return (
    <>
      {question !== null && (
        <div class="step waiting asked-back" id={NOW}>
          <h2 class="step-title">{question.answered ? askedBack.answered : askedBack.title}</h2>
          {question.text !== '' && <p class="letter">{question.text}</p>}
          {question.checks.length > 0 && (
            <section class="unsettled">
              <h3>{askedBack.checks}</h3>
              <ul>
                {question.checks.map(({ check, answer, fresh }) => (
                  <li key={check.id}>
                    <span><Told text={check.ask} /> {answer !== null && <span class="written"><ToldAnswer check={check} answer={answer} /></span>}{fresh && <span class="origin"> {askedBack.sent}</span>}</span>
                    <a href={`${plainAddress(view.link)}?look=${check.id}#${NOW}`} aria-label={`${fresh ? askedBack.change : askedBack.look}: ${check.ask}`}>{fresh ? askedBack.change : askedBack.look}</a>
                  </li>
                ))}
              </ul>
            </section>
          )}
          <PlainForm link={view.link} change="words" revision={view.revision}>
            <PlainField name="words" label={askedBack.answer} rows={3} longest={LONGEST_WORDS} value={typed['words'] ?? ''} fault={fault} />
            <p><button type="submit" class="main">{askedBack.send}</button></p>
          </PlainForm>
          {question.photos && <p>{askedBack.photos}</p>}
          <p class="hint">{askedBack.goesAtOnce}</p>
        </div>
      )}
      <div class="step waiting" id={question === null ? NOW : undefined}>
        {question === null && <h2 class="step-title">{ticket.sample !== null && ticket.state === 'sent as a sample' ? words.sample : ticket.state === 'waiting' ? words.waiting : words.taken}</h2>}
        {ticket.sample !== null && <p>{words.sampleNumber(ticket.sample.number)}</p>}
        {(question === null || question.answered) && <p>{words.within(region.answerWithinHours)}</p>}
        <p>{!ticket.contactGiven ? words.noContact : region.sendsMail ? words.contact : words.contactNoMail}</p>
        <PlainLink address={address} />
        <p><a href={plainAddress(view.link)}>{plain.look}</a></p>
        {view.step.kind === 'ask' && <p>{words.goOn}</p>}
        <PlainPhotos page={page} mayRemove={false} />
      </div>
    </>
  )
}

/** The way back to the sheet, to be copied. */
export function PlainLink({ address }: { readonly address: string }) {
  const words = useSheetWording().after
  const plain = usePlainWording()
  return (
    <div class="private-link">
      <label for="private-link">{words.link}</label>
      <input id="private-link" type="text" readOnly value={address} />
      <p class="hint">{plain.link} {words.keepPrivate}</p>
    </div>
  )
}
