import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { guideIn } from '../../src/guide/index.js'
import { buildMatchIndex, matchQuestion, sayNothing } from '../../src/match/index.js'
import { spanishSingular, spanishStem } from '../../src/match/languages/spanish-stems.js'
import { wholeGuide } from '../whole-guide.js'
import { MIXED_QUESTIONS, SPANISH_OUT_OF_SCOPE, SPANISH_QUESTIONS, type SpanishQuestion } from './spanish-questions.js'

const whole = await wholeGuide()
const index = buildMatchIndex(guideIn(whole, 'es'))

function rankOf({ words, host, nodes }: SpanishQuestion): number {
  const rank = matchQuestion(index, words).entries.findIndex((entry) => entry.host === host && nodes.includes(entry.node))
  return rank < 0 ? Number.POSITIVE_INFINITY : rank
}

function missed(questions: readonly SpanishQuestion[], holds: (question: SpanishQuestion) => boolean): readonly string[] {
  return questions.filter((question) => !holds(question)).map(({ words }) => words)
}

describe('questions asked in Spanish', () => {
  it('are sixty and more', () => {
    expect(SPANISH_QUESTIONS.length).toBeGreaterThanOrEqual(60)
  })

  it('name their plant', () => {
    const not = missed(SPANISH_QUESTIONS, ({ words, host }) => matchQuestion(index, words).hosts[0]?.host === host)
    expect(not, not.join('\n')).toHaveLength(0)
  })

  it('let a plant that is named for company step back', () => {
    expect(matchQuestion(index, 'los tomates de al lado tienen lo mismo, pepinos con hojas amarillas').hosts[0]?.host).toBe('cucumber')
  })

  it('begin at the right complaint in nine of ten, and offer it among three in 24 of 25', () => {
    const notFirst = missed(SPANISH_QUESTIONS, (question) => rankOf(question) === 0)
    const notOffered = missed(SPANISH_QUESTIONS, (question) => rankOf(question) < 3)
    expect(notFirst.length / SPANISH_QUESTIONS.length, notFirst.join('\n')).toBeLessThanOrEqual(0.1)
    expect(notOffered.length / SPANISH_QUESTIONS.length, notOffered.join('\n')).toBeLessThanOrEqual(0.04)
  })

  it('raise no emergency, and none is refused as out of scope', () => {
    const alarmed = missed(SPANISH_QUESTIONS, ({ words }) => {
      const { redFlags, outOfScope } = matchQuestion(index, words)
      return !outOfScope && redFlags.every(({ level }) => level !== 'emergency')
    })
    expect(alarmed).toEqual([])
  })

  it('may hold English words', () => {
    expect(missed(MIXED_QUESTIONS, (question) => rankOf(question) === 0 && matchQuestion(index, question.words).hosts[0]?.host === question.host)).toEqual([])
  })

  // As measured: a word that also names a complaint ("pala", "cambiar") still outweighs the errand in two of the seven.
  it('about something else are known for that in five of seven', () => {
    const heard = SPANISH_OUT_OF_SCOPE.filter((words) => !matchQuestion(index, words).outOfScope)
    expect(heard.length, heard.join('\n')).toBeLessThanOrEqual(2)
  })

  it('are heard the same in capitals, without accents and with any marks around them', () => {
    // Not the mark of a question, which may change what was told into what is asked.
    const marks = fc.constantFrom('', ' ', '¿', '¡', '...', ' - ')
    fc.assert(fc.property(fc.constantFrom(...SPANISH_QUESTIONS), marks, marks, fc.boolean(), fc.boolean(), ({ words }, before, after, loud, bare) => {
      const cased = loud ? words.toUpperCase() : words
      const said = before + (bare ? cased.normalize('NFD').replace(/\p{M}/gu, '') : cased.normalize('NFD')) + after
      expect(heardIn(said)).toEqual(heardIn(words))
    }), { numRuns: 60 })
  })

  it('take a word that is asked for no answer', () => {
    const answersIn = (words: string) => matchQuestion(index, words).findings.map(({ answer }) => answer)
    expect(answersIn('cactus arrugado')).toEqual(['shrunken or wrinkled'])
    expect(answersIn('¿cactus arrugado?')).toEqual([])
  })

  it('tell what is denied from what is there', () => {
    const scoreOf = (words: string): number => matchQuestion(index, words).entries.find(({ host, node }) => host === 'rose' && node === 'curl-bugs')?.score ?? 0
    expect(scoreOf('el rosal tiene pulgones')).toBeGreaterThan(scoreOf('el rosal no tiene pulgones'))
    expect(scoreOf('el rosal tiene pulgones')).toBeGreaterThan(scoreOf('el rosal nunca tuvo pulgones'))
  })
})

describe('dangers asked in Spanish', () => {
  it.each(['nadie comió las bayas del jardín', 'el niño no se tragó la hoja', 'la parra tiene ampollas en las hojas'])('no emergency is heard in: %s', (words) => {
    expect(matchQuestion(index, words).redFlags.filter(({ level }) => level === 'emergency')).toEqual([])
  })

  it.each([['el niño se tragó la hoja de una planta', 'someone-ate-plant'], ['TENGO AMPOLLAS EN LAS MANOS DE PODAR LA RUDA', 'sap-on-skin']])('an emergency is heard in: %s', (words, flag) => {
    expect(matchQuestion(index, words).redFlags.map(({ redFlag }) => redFlag)).toContain(flag)
  })
})

describe('forms of Spanish words', () => {
  it.each([
    ['hoja', ['hojas', 'hojitas', 'ojas']], ['seco', ['seca', 'secas', 'secan', 'secando']], ['mancha', ['manchas', 'manchita', 'manchado']],
    ['marchita', ['marchitas', 'marchitan', 'marchitando']], ['podrido', ['podrida', 'pudre', 'pudriendo', 'pudren']],
    ['enrollada', ['enrollan', 'enrolladas', 'enrolla']], ['blanco', ['blancas', 'blanquecino']], ['agujero', ['agujeros', 'agujerito']],
    ['flor', ['flores', 'florecitas']], ['pulgon', ['pulgones']], ['gusano', ['gusanos', 'gusanitos']], ['muere', ['muriendo', 'muerto', 'muertas']],
  ])('of %s meet', (word, forms) => {
    for (const form of forms) expect(`${form} ${spanishStem(form)}`).toBe(`${form} ${spanishStem(word)}`)
  })

  it.each([['pera', 'perro'], ['rosa', 'roza'], ['hongo', 'hoja'], ['casa', 'caer'], ['mora', 'moho'], ['comida', 'comodo'], ['pala', 'palo seco']])('of %s and %s do not', (one, other) => {
    expect(spanishStem(one)).not.toBe(spanishStem(other))
  })

  it('lose only their plural in a name', () => {
    expect(['rosales', 'lechugas', 'tomates', 'manzanos', 'raices', 'cactus', 'vides', 'fresas', 'arboles'].map(spanishSingular))
      .toEqual(['rosal', 'lechuga', 'tomate', 'manzano', 'raiz', 'cactus', 'vid', 'fresa', 'arbol'])
  })
})

describe('Spanish words that say nothing', () => {
  it.each(['tienen', 'se están', '¿qué le pasa?', 'los días'])('are not quoted back: %s', (words) => {
    expect(sayNothing(words, 'es-MX')).toBe(true)
  })

  it('are told from those that do, and are not taken for English ones', () => {
    expect(sayNothing('manchas negras', 'es')).toBe(false)
    expect(sayNothing('tan')).toBe(false)
  })
})

function heardIn(words: string): unknown {
  const { redFlags, hosts, entries, findings, confidence, outOfScope } = matchQuestion(index, words)
  return {
    flags: redFlags.map(({ redFlag }) => redFlag), hosts: hosts.map(({ host, score }) => [host, score]), entries: entries.map(({ host, node, score }) => [host, node, score]),
    findings: findings.map(({ check, answer }) => [check, answer]), confidence, outOfScope,
  }
}
