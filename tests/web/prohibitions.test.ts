import { describe, expect, it } from 'vitest'
import { sortProhibitions } from '../../src/web/case/prohibitions.js'

describe('what a red flag says not to do', () => {
  it('stands alone where the line says it itself', () => {
    const lines = ['Do not rub the eye.', 'Never mix products.', 'Don’t wait.', 'Avoid the smoke.']
    expect(sortProhibitions(lines)).toEqual({ whole: lines, bare: [] })
  })

  it('goes under the heading where the line alone would say the opposite', () => {
    expect(sortProhibitions(['Rub the eye.', 'Do not wait.', 'Dose it with salt.'])).toEqual({ whole: ['Do not wait.'], bare: ['Rub the eye.', 'Dose it with salt.'] })
  })

  it('keeps every line and every word of it', () => {
    const lines = ['Do not climb it. Do not cut it.', 'DO NOT touch a wire.', '', 'Nothing by mouth.', 'Notify nobody.']
    const { whole, bare } = sortProhibitions(lines)
    expect([...whole, ...bare].sort()).toEqual([...lines].sort())
  })
})
