import { renderToString as render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import type { CaseView } from '../../shared/index.js'
import { AfterHandOver } from '../../src/web/case/after-hand-over.js'
import { FilledLines } from '../../src/web/case/filled-lines.js'
import { HandOverForm } from '../../src/web/case/hand-over-form.js'
import { SheetWordingProvider } from '../../src/web/wording/sheet-language.js'
import { staffWording } from '../../src/web/wording/staff.js'

type Ticket = NonNullable<CaseView['ticket']>
const waiting: Ticket = { state: 'waiting', openedAt: '2026-11-25T09:00:00.000Z', contactGiven: true, reply: null, earlierReplies: [], askedBack: null, sample: null }
const askedBack: Ticket = { ...waiting, state: 'asked back', askedBack: { text: 'Is it the same on every stem?', at: '2026-11-25T10:00:00.000Z', checks: [], photos: false, answered: false } }

const show = (ticket: Ticket, sendsMail: boolean) => render(
  <AfterHandOver
    ticket={ticket} address="https://plants.example/case#x" answerWithinHours={48} sendsMail={sendsMail} mayGoOn={false} headingRef={null} onLook={() => {}}
    onLookAt={() => {}} onWrite={() => {}} wordsSoFar={1} disabled={false} photos={null}
  />)
const form = (sendsMail: boolean) => <HandOverForm link="x" disabled={false} sending={false} sendsMail={sendsMail} headingRef={null} onHandOver={() => {}} />

describe('a sheet that was handed over', () => {
  it('promises a letter only where the service sends mail', () => {
    expect(show(waiting, true)).toContain('We will reach you as you asked.')
    expect(show(waiting, false)).not.toContain('We will reach you')
    expect(show(waiting, false)).toContain('keep this link')
    expect(render(form(false))).toContain('We send no mail from here')
    expect(render(form(true))).not.toContain('We send no mail')
  })

  it('has a place for an answer in words, and no time of ours runs while the asker’s answer is awaited', () => {
    expect(show(askedBack, true)).toContain('Send it to the specialist')
    expect(show(askedBack, true)).not.toContain('within 2 days')
    expect(show(waiting, true)).toContain('within 2 days')
    expect(show({ ...askedBack, askedBack: askedBack.askedBack && { ...askedBack.askedBack, answered: true } }, true)).toContain('within 2 days')
  })
})

describe('the hand-over on the call sheet', () => {
  it('is worded for a volunteer who reads it aloud', () => {
    const html = render(<SheetWordingProvider value={staffWording}>{form(true)}</SheetWordingProvider>)
    expect(html).toContain('Say: “A specialist reads the whole sheet')
    expect(html).toContain('Ask: “How may we reach you?')
    expect(html).toContain('Hand the sheet over')
    expect(html).not.toContain('Hand my sheet over')
  })
})

describe('the filled lines', () => {
  const line: CaseView['lines'][number] = { check: { id: 'leaf', ask: 'What is on the leaf?', how: 'Look.', why: 'It tells.', effort: 'glance', answers: ['spots'] }, answer: 'spots', from: 'note', onPath: false }

  it('are off the usual way only once a plant is chosen', () => {
    expect(render(<FilledLines lines={[line]} placed={false} />)).not.toContain('Off the usual way')
    expect(render(<FilledLines lines={[line]} placed />)).toContain('Off the usual way')
  })

  it('do not call the asker’s own words off the way', () => {
    const said = { ...line, from: 'said' as const }
    expect(render(<FilledLines lines={[said]} placed />)).toContain('you said')
    expect(render(<FilledLines lines={[said]} placed />)).not.toMatch(/Off the usual way|off-path/)
  })

  it('call what the sheet itself asked beside the way a look to the side', () => {
    const asked = { ...line, from: 'asked' as const }
    expect(render(<FilledLines lines={[asked]} placed />)).toContain('A look to the side. It still counts.')
    expect(render(<FilledLines lines={[asked]} placed />)).not.toContain('Off the usual way')
    expect(render(<FilledLines lines={[{ ...asked, onPath: true }]} placed />)).not.toContain('A look to the side')
  })
})
