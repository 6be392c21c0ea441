import { renderToString as render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import type { CaseStep, CheckCard } from '../../shared/index.js'
import { AdviceSheet } from '../../src/web/case/advice-sheet.js'
import { monthRuns, seasonsNamed } from '../../src/web/case/time-of-year.js'
import { UnsettledChecks } from '../../src/web/case/unsettled-checks.js'

type Conclusion = Extract<CaseStep, { kind: 'conclude' }>

const check = (id: string, effort: string): CheckCard => ({ id, ask: `Ask about ${id}?`, how: 'Look.', why: 'It tells.', effort, answers: ['yes', 'no'] })
const likely = (problem: string, probability: number) => ({ problem, name: problem, what: '', probability, for: [], against: [] })

/** Creeping charlie, with Japanese knotweed far behind it. */
function conclusion(more: Partial<Conclusion> = {}): Conclusion {
  return {
    kind: 'conclude', why: likely('creeping-charlie', 0.9),
    card: {
      problem: 'creeping-charlie', name: 'Creeping charlie', what: 'A weed.', agent: null, kind: 'weed', sureness: 'very likely', probability: 0.9,
      bottomLine: 'Pull it up.', doNow: [], notWorthDoing: [], nextYear: [], months: [], spray: 'No spray is needed.', spraysNothing: true, cautions: [], escalate: null, escalateCall: null,
      lookAlikes: [], sources: [], reviewedOn: '2026-11-25',
    },
    others: [0.05, 0.049, 0.048, 0.047].map((share, place) => likely(`other-${place}`, share + 0.01)), turns: [],
    watched: [{ problem: 'weed-knotweed', name: 'Japanese knotweed', probability: 0.03, escalate: 'Send a photo before you dig.', call: { name: 'Larkmoor plant health office', number: '555-0144' } }],
    ...more,
  }
}

describe('the advice', () => {
  it('names a problem that must be reported however unlikely, with whom to call', () => {
    const html = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion()} headingRef={null} />)
    expect(html).toContain('We cannot rule this out: Japanese knotweed')
    expect(html).toContain('Send a photo before you dig.')
    expect(html).toContain('href="tel:5550144"')
    expect(html).toContain('about 3 in 100')
  })

  it('shows at most three other causes', () => {
    const html = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion()} headingRef={null} />)
    expect([...html.matchAll(/class="likely-name">([^<]+)/g)].map(found => found[1])).toEqual(['other-0', 'other-1', 'other-2'])
  })

  it('says what would change it, with no way to look once the sheet is closed', () => {
    const turns = [{ check: check('stem', 'glance'), answer: 'jointed', toName: 'Japanese knotweed' }]
    expect(render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ turns })} headingRef={null} onLookAt={() => {}} />)).toContain('Look at this')
    const closed = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ turns })} headingRef={null} />)
    expect(closed).toContain('If instead you saw “jointed” at “Ask about stem?”, it would more likely be: <b>Japanese knotweed</b>')
    expect(closed).not.toContain('Look at this')
  })

  it('heads what it says of sprays by whether one is called for', () => {
    const sprayed = { ...conclusion().card, spray: 'Read the label first: the label is the law.', spraysNothing: false }
    expect(render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion()} headingRef={null} />)).toContain('<h4>No spray</h4>')
    expect(render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ card: sprayed })} headingRef={null} />)).toContain('<h4>Spraying</h4>')
  })

  it('says of a job how it is done and why, and not how sure, what else or which spray', () => {
    const card = { ...conclusion().card, problem: 'job-prune-rose', kind: 'garden job', what: 'Roses are pruned late in winter.' }
    const html = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ card, watched: [] })} headingRef={null} />)
    expect(html).toContain('How it is done')
    expect(html).toContain('Roses are pruned late in winter.')
    expect(html).not.toMatch(/How sure|No spray|What else it could be|What we think it is/)
  })

  it('says nothing of turns and reports when there are none', () => {
    const html = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ watched: [], others: [] })} headingRef={null} />)
    expect(html).not.toMatch(/What would change this|We cannot rule this out|What else it could be/)
  })
})

describe('the time of year in the advice', () => {
  const card = { ...conclusion().card, months: [4, 5, 6, 9], nextYear: ['Rake up the leaves in autumn.', 'Prune in midwinter.'] }

  it('says in which months it is seen, what the named seasons are, and when it was asked', () => {
    const html = render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ card })} headingRef={null} />)
    expect(html).toContain('It is mostly seen in April to June and September.')
    expect(html).toContain('By autumn we mean September to November.')
    expect(html).toContain('By winter we mean December to February.')
    expect(html).toContain('You asked in November. Do each step in its own month.')
    expect(html).not.toContain('By spring')
  })

  it.each([
    ['Grow summer squash elsewhere.', []], ['Water it from a spring.', []], ['The mites spend the winter on the twigs.', []], ['Set traps in winter moth months.', []],
    ['Plant in spring or autumn.', ['spring', 'autumn']], ['Cut in late winter or early spring.', ['spring', 'winter']], ['Wait until next spring.', ['spring']], ['Look by midsummer.', ['summer']],
  ])('takes %j as the times %j', (step, seasons) => {
    expect(seasonsNamed({ doNow: [step], nextYear: [], spray: '' }).map(({ season }) => season)).toEqual(seasons)
  })

  it('reads only steps: what the problem did last winter is no time to do anything', () => {
    const past = { ...conclusion().card, bottomLine: 'It came in winter.', notWorthDoing: ['Cutting in summer.'] }
    expect(render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion({ card: past })} headingRef={null} />)).not.toContain('we mean')
  })

  it('says nothing where no step is bound to a month', () => {
    expect(render(<AdviceSheet askedOn="2026-11-25" conclusion={conclusion()} headingRef={null} />)).not.toContain('When')
  })

  it.each<[number[], [number, number][]]>([[[11, 12, 1], [[11, 1]]], [[7], [[7, 7]]], [[], []], [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], []]])('makes of the months %j the runs %j', (months, runs) => {
    expect(monthRuns(months)).toEqual(runs)
  })
})

describe('the checks that are still open', () => {
  it('are apart by whether they can be looked at now, with the number keys in the order of the list', () => {
    const html = render(<UnsettledChecks checks={[check('dark', 'wait a day'), check('roots', 'dig')]} keyed onLookAt={() => {}} />)
    expect(html.indexOf('Ask about roots?')).toBeLessThan(html.indexOf('For tomorrow'))
    expect(html).toMatch(/Look now<kbd>2<\/kbd>/)
    expect(html).toMatch(/I have looked<kbd>1<\/kbd>/)
  })
})
