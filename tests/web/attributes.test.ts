import { describe, expect, it } from 'vitest'
import { readAttributes, type PanelAttribute } from '../../src/web/panel/attributes.js'

function read(attributes: Partial<Record<PanelAttribute, string>>, pageLanguage: string | null = null, readerLanguages: readonly string[] = []) {
  const warnings: string[] = []
  const settings = readAttributes(name => attributes[name] ?? null, {
    defaultService: 'https://plants.example', pageAddress: 'https://parish.example/garden/', pageLanguage, readerLanguages,
    warn: (attribute, value) => warnings.push(`${attribute}=${value}`),
  })
  return { settings, warnings }
}

describe('the panel’s attributes', () => {
  it('all have a default', () => {
    expect(read({})).toEqual({ settings: { service: 'https://plants.example', district: null, accent: null, language: 'en' }, warnings: [] })
  })

  it('take an address with a path and lose its last slash', () => {
    expect(read({ service: 'https://help.example/plants/' }).settings.service).toBe('https://help.example/plants')
    expect(read({ service: '/plants' }).settings.service).toBe('https://parish.example/plants')
  })

  it('fall back and warn for what cannot be used', () => {
    const { settings, warnings } = read({ service: 'javascript:alert(1)', district: '<b>', accent: 'teal', language: 'tlh' })
    expect(settings).toEqual(read({}).settings)
    expect(warnings).toEqual(['service=javascript:alert(1)', 'district=<b>', 'accent=teal', 'language=tlh'])
  })

  it('take the language from the attribute, else from the page, else from the reader', () => {
    expect(read({ language: 'es-MX' }, 'en').settings.language).toBe('es')
    expect(read({}, 'es', ['en-GB']).settings.language).toBe('es')
    expect(read({}, 'cy', ['fr', 'es-AR', 'en']).settings.language).toBe('es')
    expect(read({ language: 'tlh' }, null, ['es']).settings.language).toBe('es')
  })

  it('do not warn of the page’s own language', () => {
    expect(read({}, 'cy').warnings).toEqual([])
    expect(read({ language: 'en-GB' }, 'cy')).toMatchObject({ settings: { language: 'en' }, warnings: [] })
  })
})
