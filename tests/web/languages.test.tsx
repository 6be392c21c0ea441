import { renderToString as render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import type { CheckCard } from '../../shared/index.js'
import { FilledLines } from '../../src/web/case/filled-lines.js'
import { sortProhibitions } from '../../src/web/case/prohibitions.js'
import { seasonsNamed } from '../../src/web/case/time-of-year.js'
import { Told, UntranslatedProvider } from '../../src/web/case/told.js'
import { byCount } from '../../src/web/wording/by-count.js'
import { dayInWords, inOneLine, monthInWords } from '../../src/web/wording/day.js'
import { enPlain } from '../../src/web/wording/en-plain.js'
import { enSheet } from '../../src/web/wording/en-sheet.js'
import { en } from '../../src/web/wording/en.js'
import { esPlain } from '../../src/web/wording/es-plain.js'
import { esSheet } from '../../src/web/wording/es-sheet.js'
import { es } from '../../src/web/wording/es.js'
import { spokenLanguage, SpokenProvider } from '../../src/web/wording/language.js'
import { spanish } from '../../src/web/wording/spoken-es.js'

/** Every text of a wording with the keys that lead to it; those made from values are made with plausible ones. */
function texts(part: unknown, path: readonly string[] = []): [path: string, text: string][] {
  if (typeof part === 'string') return [[path.join('.'), part]]
  if (typeof part === 'function') return [2, 1].map((count): [string, string] => [path.join('.'), String(part(path.includes('left') ? { least: count, most: count } : count, 'tizón'))])
  if (typeof part === 'object' && part !== null) return Object.entries(part).flatMap(([key, inner]) => texts(inner, [...path, key]))
  return []
}

describe('the Spanish words of the interface', () => {
  const [english, translated] = [[en, enSheet, enPlain], [es, esSheet, esPlain]].map(all => all.flatMap(one => texts(one)))

  it('say each thing that the English ones say, and nothing else', () => {
    expect(translated?.map(([path]) => path)).toEqual(english?.map(([path]) => path))
  })

  it('leave nothing in English', () => {
    // What is the same in both: names that are put in, and what is written with digits alone.
    const same = english?.filter(([path, text], place) => translated?.[place]?.[1] === text && text !== '' && !/^(title\.(check|conclude)|outcome\.problem|advice\.months|after\.outcome\.problem)$/.test(path))
    expect(same).toEqual([])
    expect(translated?.filter(([, text]) => /\b(the|your|and|please|with|you)\b/i.test(text))).toEqual([])
  })

  it('open each question and exclamation as Spanish does', () => {
    // Real Academia Española, Ortografía de la lengua española (2010), 3.4.9: both signs are always written (from memory).
    expect(translated?.filter(([, text]) => (text.match(/\?/g) ?? []).length !== (text.match(/¿/g) ?? []).length)).toEqual([])
  })

  it('speak to the asker as usted', () => {
    expect(translated?.filter(([, text]) => /(?<!\p{L})(tú|tus?|ti|contigo|eres|tienes|puedes|quieres|haz|mira|elige|escribe|pulsa)(?!\p{L})/iu.test(text))).toEqual([])
  })
})

describe('numbers and dates in a language', () => {
  it.each([[1, 'línea'], [0, 'líneas'], [2, 'líneas'], [21, 'líneas']])('counts %d %s', (count, form) => {
    // Unicode CLDR plural rules, Spanish: 'one' is n = 1, everything a sheet counts besides is 'other'.
    expect(byCount('es', count, { one: 'línea', other: 'líneas' })).toBe(form)
  })

  it('are written as the language writes them', () => {
    expect(dayInWords('2026-11-25', 'es')).toBe('25 de noviembre de 2026')
    expect(dayInWords('2026-11-25')).toBe('25 November 2026')
    expect(monthInWords(4, 'es')).toBe('abril')
    expect(inOneLine(['abril', 'junio'], 'es')).toBe('abril y junio')
  })
})

describe('the choice of a language', () => {
  it.each([['es', 'es'], ['es-MX', 'es'], ['ES-419', 'es'], ['en-GB', 'en'], ['', null], ['eszett', null], ['fr', null], ['constructor', null]])('takes the tag "%s" as %s', (tag, language) => {
    expect(spokenLanguage(tag)).toBe(language)
  })
})

describe('a text of the guide', () => {
  it('says its language only where it is another than around it', () => {
    const html = render(<UntranslatedProvider value={new Set(['Leaf rust'])}><p><Told text="Leaf rust" /> <Told text="Roya" /></p></UntranslatedProvider>)
    expect(html).toBe('<p><span lang="en">Leaf rust</span> Roya</p>')
  })

  it('is shown for an answer while its name stays what is sent', () => {
    const check: CheckCard = { id: 'slime', ask: '¿Hay baba?', how: '', why: '', effort: 'glance', answers: ['yes', 'no'], shown: { yes: 'sí', no: 'no' } }
    const lines = (['yes', 'not sure'] as const).map(answer => ({ check: { ...check, id: answer }, answer, from: 'asked' as const, onPath: true }))
    const html = render(<SpokenProvider value={spanish}><FilledLines lines={lines} placed /></SpokenProvider>)
    expect([...html.matchAll(/class="written">([^<]+)/g)].map(([, text]) => text)).toEqual(['sí', 'no lo tengo claro'])
  })
})

describe('what the screens read out of advice in Spanish', () => {
  it('is whether a line says no by itself', () => {
    expect(sortProhibitions(['No se frote el ojo.', 'Nunca mezcle productos.', 'Evite el humo.', 'Frotarse el ojo.'], 'es'))
      .toEqual({ whole: ['No se frote el ojo.', 'Nunca mezcle productos.', 'Evite el humo.'], bare: ['Frotarse el ojo.'] })
  })

  it.each<[string, string[]]>([
    ['Recoja las hojas en otoño.', ['autumn']], ['Pode a finales de invierno o a principios de primavera.', ['spring', 'winter']],
    ['Espere hasta la próxima primavera.', ['spring']], ['Riegue desde la primavera hasta el otoño.', ['spring', 'autumn']],
    ['Póngala al sol.', []], ['Plante calabaza de verano.', []], ['Hiberna en la corteza.', []],
  ])('is the seasons in %j: %j', (step, seasons) => {
    expect(seasonsNamed({ doNow: [step], nextYear: [], spray: '' }).map(({ season }) => season)).toEqual(seasons)
  })
})
