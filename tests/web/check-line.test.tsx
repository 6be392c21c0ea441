import { renderToString as render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import type { CheckCard, FlagCard } from '../../shared/index.js'
import { CheckLine } from '../../src/web/case/check-line.js'
import { ReadAloud } from '../../src/web/sheet/read-aloud.js'

const check: CheckCard = { id: 'leaf-underside', ask: 'What is under the leaf?', how: 'Turn it over.', why: 'It tells.', effort: 'glance', answers: ['white fuzz', 'nothing'] }
const line = { check, cards: [], number: 4, left: null, before: null, disabled: false, headingRef: null, onAnswer: () => undefined }

describe('a check open for an answer', () => {
  it('says that a look is for the specialist, and that passing over it hands the sheet on', () => {
    const asked = render(<CheckLine {...line} isLastLook />)
    expect(asked).toContain('A specialist should see this one.')
    expect(asked).toContain('Then a specialist can take it from here.')
    expect(asked).not.toContain('We then ask something else.')
    expect(render(<ReadAloud {...line} isLastLook />)).toContain('A specialist should see this one.')
  })

  it('says nothing of a specialist otherwise', () => {
    const asked = render(<CheckLine {...line} />)
    expect(asked).not.toContain('specialist')
    expect(asked).toContain('We then ask something else.')
    expect(render(<ReadAloud {...line} />)).not.toContain('specialist')
  })

  it('says how to look without harm, once, where a card of an emergency has it', () => {
    const card = (id: string, level: FlagCard['level']): FlagCard => ({ id, title: id, level, doNow: [], doNot: [], calls: [], then: 'carry on', looking: 'Look only from a safe place.' })
    const notes = (html: string) => html.split('Look only from a safe place.').length - 1
    expect(notes(render(<CheckLine {...line} cards={[card('tree', 'emergency'), card('wire', 'emergency')]} />))).toBe(1)
    expect(notes(render(<ReadAloud {...line} cards={[card('tree', 'emergency')]} />))).toBe(1)
    expect(notes(render(<CheckLine {...line} cards={[card('tree', 'caution')]} />))).toBe(0)
    expect(notes(render(<CheckLine {...line} />))).toBe(0)
  })
})
