import { existsSync } from 'node:fs'
import { renderToString as render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import { LookDrawing } from '../../src/web/case/look-drawing.js'

const drawn = ['leaf-underside', 'scratch-test', 'stem-base', 'root-flare', 'roots']

describe('the drawings of how to look', () => {
  it.each(drawn)('show %s, a check of the guide, with the same in words', check => {
    expect(existsSync(`trees/checks/${check}.yaml`)).toBe(true)
    expect(render(<LookDrawing check={check} />)).toMatch(/^<svg [^>]*role="img" aria-label="Drawing: [^"]+\."/)
  })

  it.each(['recent-weather', 'constructor'])('are none for %s', check => {
    expect(render(<LookDrawing check={check} />)).toBe('')
  })
})
