import { renderToString as render } from 'preact-render-to-string'
import { expect, it } from 'vitest'
import { SampleNote } from '../../src/web/case/sample-note.js'

it('tells the asker what a laboratory can do and how to pack, and leaves out the question that is the specialist’s', () => {
  const html = render(<SampleNote sample={{ id: 'lab-sample', ask: 'What did the laboratory find?', how: 'Wrap it in dry paper.', why: 'A laboratory can grow what no eye can see.', effort: 'wait a day', answers: ['a fungus'] }} />)
  expect(html).toContain('A laboratory can grow what no eye can see.')
  expect(html).toContain('Wrap it in dry paper.')
  expect(html).not.toContain('What did the laboratory find?')
  expect(render(<SampleNote sample={null} />)).toBe('')
})
