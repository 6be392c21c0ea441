import type { CaseView, CheckCard, ComplaintRows, HostRows, Language, RegionView } from '../../../shared/index.js'

/** What was asked for besides the step that the sheet is at. */
export type PlainAside =
  | { readonly kind: 'line', readonly check: CheckCard, readonly before: string | null }
  | { readonly kind: 'plants', readonly hosts: HostRows['hosts'] }
  | { readonly kind: 'complaints', readonly host: string, readonly name: string, readonly complaints: ComplaintRows['complaints'] }
  | { readonly kind: 'specialist' }

/** What was typed into a form that could not be taken, by the names of its fields: shown again, to be mended. */
export type Typed = Readonly<Record<string, string>>

/** What went wrong with a form, in words for the asker. */
export interface PlainFault {
  /** The field it is about, or null when it is about the whole. */
  readonly field: string | null
  readonly words: string
}

export interface OpeningPage {
  readonly kind: 'opening'
  readonly language: Language
  readonly region: RegionView
  /** Fresh for each page: pressing twice opens one case. */
  readonly openingKey: string
  readonly typed: Typed
  readonly fault: PlainFault | null
  /** True where a link led to no case. */
  readonly gone: boolean
}

export interface CasePage {
  readonly kind: 'case'
  readonly region: RegionView
  readonly view: CaseView
  readonly aside: PlainAside | null
  /** The whole address of this sheet, to be kept. */
  readonly address: string
  /** Every plant; for the step that asks for one. */
  readonly hosts: HostRows['hosts']
  /** Texts of the lists on this page that stand in the guide's own language. */
  readonly untranslated: readonly string[]
  /** Fresh for each page: pressing twice sends one photo. */
  readonly uploadKey: string
  readonly typed: Typed
  readonly fault: PlainFault | null
}

export type PlainPage = OpeningPage | CasePage

/** The address of one case's sheet, and of what is done to it. */
export function plainAddress(link: string, part = ''): string {
  return `/ask/${link}${part === '' ? '' : `/${part}`}`
}

/** Where the page opens after an answer: at what the sheet is at now. */
export const NOW = 'now'
