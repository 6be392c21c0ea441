import { describe, expect, it } from 'vitest'
import { compileGuide } from '../../../src/guide/index.js'
import { brief, lettuceFiles, swap, TODAY } from '../lettuce-world.js'
import { compileSpanish, SPANISH_CHECK } from './spanish-lettuce.js'

const file = 'checks/leaf-top.es.yaml'
const told = (translations: Record<string, string>, changes: Parameters<typeof compileSpanish>[1] = {}) => {
  const { errors, warnings } = compileSpanish(translations, changes)
  return brief([...errors, ...warnings]).map(({ code, at, nearest }) => `${code} ${at} ${nearest.join()}`.trim())
}

describe('proving translations', () => {
  it('accepts one that is whole and up to date', () => {
    expect(told({ [file]: SPANISH_CHECK })).toEqual([])
  })

  it('points at an answer and a key that the original has not, with the nearest', () => {
    // Warnings: a translation that lags behind must not hold back a change of the English, nor the service.
    expect(compileSpanish({ [file]: swap('brown edges:', 'brown edgs:')(SPANISH_CHECK) }).errors).toEqual([])
    expect(told({ [file]: swap('brown edges:', 'brown edgs:')(SPANISH_CHECK) })).toContainEqual(
      expect.stringMatching(/^NOT_IN_ORIGINAL trees\/checks\/leaf-top\.es\.yaml:\d+:3 brown edges$/))
    expect(told({ [file]: `${SPANISH_CHECK}effort: glance\n` })).toContainEqual(
      expect.stringMatching(/^NOT_IN_ORIGINAL trees\/checks\/leaf-top\.es\.yaml:\d+:1/))
  })

  it('points at a translation of nothing, with the nearest name', () => {
    expect(told({ 'checks/leaf-tops.es.yaml': swap('check: leaf-top', 'check: leaf-tops')(SPANISH_CHECK) })).toEqual(
      ['NOT_IN_ORIGINAL trees/checks/leaf-tops.es.yaml:1:8 leaf-top'],
    )
  })

  it('points at a file named for another id and at a list where one text belongs', () => {
    const misnamed = compileGuide([...lettuceFiles(), { path: 'trees/checks/slime.es.yaml', text: SPANISH_CHECK }], { today: TODAY })
    expect(brief(misnamed.errors)).toEqual([{ code: 'FILE_NAME', at: 'trees/checks/slime.es.yaml:1:8', nearest: [] }])
    expect(told({ [file]: swap('how: Mire tres hojas.', 'how: [Mire tres hojas.]')(SPANISH_CHECK) }).map((line) => line.split(' ')[0])).toContain('SHAPE')
  })

  it('warns where a complete one lacks a text, and not where it does not claim to be complete', () => {
    const without = swap('why: El borde dice mucho.\n', '')(SPANISH_CHECK)
    expect(told({ [file]: without })[0]).toMatch(/^NOT_TRANSLATED/)
    expect(told({ [file]: swap('complete: yes', 'complete: no')(without) })).toEqual([])
  })

  it('warns where the English of a complete one has changed', () => {
    const { errors, warnings } = compileSpanish({ [file]: SPANISH_CHECK }, { 'checks/leaf-top.yaml': swap('Look at three leaves.', 'Look at four leaves.') })
    expect(errors).toEqual([])
    expect(warnings.map(({ code }) => code)).toEqual(['TRANSLATION_OUT_OF_DATE'])
    expect(warnings[0]?.message).toContain('"how"')
    expect(warnings[0]?.message).not.toContain('"ask"')
  })

  it('warns of Spanish that is hard to read', () => {
    const hard = swap('Mire tres hojas.', 'Seleccione meticulosamente determinadas hojas representativas, procurando inspeccionarlas individualmente.')
    expect(told({ [file]: hard(SPANISH_CHECK) })[0]).toMatch(/^READING_EASE/)
  })

  it('asks a complete host for its problems and checks too', () => {
    const codes = told({ 'hosts/lettuce.es.yaml': 'host: lettuce\ncomplete: yes\n' }).map((line) => line.split(' ')[0])
    expect(new Set(codes)).toEqual(new Set(['NOT_TRANSLATED']))
    expect(codes.length).toBe(7)
  })
})
