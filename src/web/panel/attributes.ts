import type { Language } from '../../../shared/index.js'
import { languages, spokenLanguage } from '../wording/language.js'
import { accentPair, type AccentPair } from './accent.js'

/** The attributes a host page may set on the panel, as they stand in its markup. */
export const panelAttributes = ['service', 'district', 'accent', 'language'] as const
export type PanelAttribute = (typeof panelAttributes)[number]

/** The attributes, narrowed. */
export interface PanelSettings {
  readonly service: string
  readonly district: string | null
  readonly accent: AccentPair | null
  readonly language: Language
}

interface Surroundings {
  /** Address of the service when the page names none. */
  readonly defaultService: string
  /** Address of the host page, for a service named by a path alone. */
  readonly pageAddress: string
  /** The nearest `lang` around the panel, or null. */
  readonly pageLanguage: string | null
  /** What the reader has told the browser, best first. */
  readonly readerLanguages: readonly string[]
  /** Told of each value that could not be used; the panel then does without it. */
  readonly warn: (attribute: PanelAttribute, value: string, expected: string) => void
}

/** Narrows attributes written by strangers: what cannot be used falls back to its default and is told once. */
export function readAttributes(read: (name: PanelAttribute) => string | null, { defaultService, pageAddress, pageLanguage, readerLanguages, warn }: Surroundings): PanelSettings {
  const service = read('service')
  const district = read('district')
  const accent = read('accent')
  const language = read('language')

  const address = service === null ? defaultService : serviceAddress(service, pageAddress)
  if (service !== null && address === null) warn('service', service, 'an http or https address, such as "https://plants.example"')

  const place = district?.trim() ?? null
  const placeFits = place === null || place === '' || /^[a-z0-9][a-z0-9-]{0,79}$/.test(place)
  if (district !== null && !placeFits) warn('district', district, 'the id of a district, such as "holt-fen"')

  const pair = accent === null ? null : accentPair(accent)
  if (accent !== null && pair === null) warn('accent', accent, 'a colour such as "#0d5960"')

  const asked = language === null ? null : spokenLanguage(language)
  const spoken = [asked, spokenLanguage(pageLanguage ?? ''), ...readerLanguages.map(spokenLanguage)].find(found => found !== null)
  if (language !== null && asked === null) warn('language', language, `one of: ${Object.keys(languages).join(', ')}`)

  return {
    service: address ?? defaultService,
    district: placeFits && place !== '' ? place : null,
    accent: pair,
    language: spoken ?? 'en',
  }
}

/** The address without its last slash, or null when it is not one we can call. */
function serviceAddress(text: string, pageAddress: string): string | null {
  try {
    const url = new URL(text.trim(), pageAddress)
    return url.protocol === 'http:' || url.protocol === 'https:' ? (url.origin + url.pathname).replace(/\/+$/, '') : null
  } catch {
    return null
  }
}
