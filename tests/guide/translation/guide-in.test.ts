import { describe, expect, it } from 'vitest'
import { guideIn, languageOfText, languagesOf } from '../../../src/guide/index.js'
import { lettuceGuide, swap } from '../lettuce-world.js'
import { compileSpanish, SPANISH_CHECK } from './spanish-lettuce.js'

function spanishGuide(translations: Record<string, string>, changes: Parameters<typeof compileSpanish>[1] = {}) {
  const { guide, errors } = compileSpanish(translations, changes)
  if (guide === null) throw new Error(errors.map(({ message }) => message).join('\n'))
  return guide
}

describe('a guide in another language', () => {
  const guide = spanishGuide({ 'checks/leaf-top.es.yaml': SPANISH_CHECK })
  const spanish = guideIn(guide, 'es')
  const [leafTop, underside] = [spanish.checks[0], spanish.checks[1]]

  it('has the words of that language, and the same names, numbers and hash', () => {
    expect(leafTop?.ask).toBe('¿Cómo son las marcas por arriba?')
    expect(leafTop?.answers.map(({ label, shown }) => [label, shown])).toEqual([
      ['pale patches', 'manchas pálidas'], ['ragged holes', 'agujeros rotos'], ['brown edges', 'bordes marrones'],
    ])
    expect(spanish.hash).toBe(guide.hash)
    expect(spanish.hosts[0]?.logLikelihood).toBe(guide.hosts[0]?.logLikelihood)
  })

  it('leaves the guide itself as it was', () => {
    expect(guide.checks[0]?.ask).toBe('What do the marks on top look like?')
    expect(guide.checks[0]?.answers[0]?.shown).toBe('pale patches')
    expect({ ...guide, hash: '', translations: new Map() }).toEqual({ ...lettuceGuide(), hash: '' })
  })

  it('shows what is not translated in the region\'s own language and says so', () => {
    expect(underside?.ask).toBe('What is under the leaf?')
    expect(languageOfText(spanish, underside?.ask ?? '')).toBe('en')
    expect(languageOfText(spanish, leafTop?.ask ?? '')).toBe('es')
    expect(languageOfText(guide, guide.checks[0]?.ask ?? '')).toBe('en')
  })

  it('hears the sayings of both languages, its own first', () => {
    expect(leafTop?.answers[0]?.saidAs).toEqual(['manchas palidas', 'pale patches'])
  })

  it('finds es for es-MX and ES, and is the guide itself for its own language and an unknown one', () => {
    expect(guideIn(guide, 'es-MX')).toBe(spanish)
    expect(guideIn(guide, 'ES')).toBe(spanish)
    expect(guideIn(guide, 'en-GB')).toBe(guide)
    expect(guideIn(guide, 'fr')).toBe(guide)
    expect(languagesOf(guide)).toEqual(['en', 'es'])
  })

  it('says of other answers what their translation says, of each answer that the node does not name', () => {
    const changed = spanishGuide({
      'hosts/lettuce.es.yaml': 'host: lettuce\nnodes:\n  underside:\n    answers:\n      other answers:\n        hand over: No lo sabemos.\n',
    })
    const node = guideIn(changed, 'es').hosts[0]?.nodes.find(({ name }) => name === 'underside')
    expect(node?.answers.map((target) => (target.kind === 'hand over' ? target.because : target.kind))).toEqual(['problem', 'No lo sabemos.', 'No lo sabemos.'])
  })

  it('changes the hash when only a translation changes', () => {
    expect(spanishGuide({ 'checks/leaf-top.es.yaml': swap('Mire tres hojas', 'Mire cuatro hojas')(SPANISH_CHECK) }).hash).not.toBe(guide.hash)
    expect(guide.hash).not.toBe(lettuceGuide().hash)
  })
})
