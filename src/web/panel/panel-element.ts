import { h, render } from 'preact'
import type { Language, RegionView } from '../../../shared/index.js'
import { createCaseSession, type CaseSession } from '../case/case-session.js'
import { createCaseService, type CaseService } from '../wire/case-service.js'
import { panelAttributes, readAttributes, type PanelAttribute, type PanelSettings } from './attributes.js'
import { keptLanguage, type KeptLanguage } from './kept-language.js'
import { keptLink, type KeptLink } from './kept-link.js'
import { fetchPartsAhead } from './parts.js'
import { accentStyle, panelStyle } from './panel-style.js'
import { SpokenPanel } from './spoken-panel.js'

// The file may be imported where there is no document, such as on a server.
// eslint-disable-next-line @typescript-eslint/no-extraneous-class
const ElementBase = globalThis.HTMLElement ?? (class {} as typeof HTMLElement)

/**
 * The asker's panel as a custom element. Importing this file registers nothing; `define.ts` does.
 *
 * Everything lives in a shadow root, so neither side's CSS reaches the other. While the panel is out of the document it
 * sends nothing; put back, it goes on where it was.
 */
export class PanelElement extends ElementBase {
  static readonly observedAttributes: readonly PanelAttribute[] = panelAttributes

  /** Address of the service for panels that name none; `define.ts` sets the script's own origin. */
  static defaultService = ''

  readonly #warned = new Set<string>()
  #settings: PanelSettings | null = null
  #service: CaseService | null = null
  #session: CaseSession | null = null
  #kept: KeptLink | null = null
  #keptLanguage: KeptLanguage | null = null
  /** The language that is on the screen; null before anything is. */
  #spoken: Language | null = null
  #region: RegionView | null = null
  #regionRequest: AbortController | null = null
  #place: string | null = null
  #caseLink: string | null = null
  #updateIsDue = false
  readonly #accent = typeof CSSStyleSheet === 'undefined' ? null : new CSSStyleSheet()

  /** Shows this case instead of an empty sheet, as the page of a private link does. */
  get caseLink(): string | null { return this.#caseLink }
  set caseLink(link: string | null) {
    this.#caseLink = link
    if (link !== null) this.#session?.load(link)
  }

  connectedCallback(): void {
    if (this.shadowRoot === null) {
      const root = this.attachShadow({ mode: 'open' })
      root.adoptedStyleSheets = [panelStyle(), ...(this.#accent === null ? [] : [this.#accent])]
      // The number is taken once: a panel moved on the page stays the same panel.
      panelsSoFar += 1
      this.#place = this.id === '' ? `panel ${panelsSoFar}` : `#${this.id}`
    }
    this.#update()
    this.#session?.resume()
    fetchPartsAhead()
    window.addEventListener('online', this.#onOnline)
  }

  disconnectedCallback(): void {
    window.removeEventListener('online', this.#onOnline)
    this.#regionRequest?.abort()
    this.#session?.pause()
    // A panel that is only being moved comes back before this runs.
    queueMicrotask(() => { if (!this.isConnected) this.#unmount() })
  }

  attributeChangedCallback(): void {
    if (this.#updateIsDue || !this.isConnected || this.shadowRoot === null) return
    // Several attributes set in a row make one update.
    this.#updateIsDue = true
    queueMicrotask(() => {
      this.#updateIsDue = false
      if (this.isConnected) this.#update()
    })
  }

  /** The page around may want to speak the same language, as the page of a private link does. */
  readonly #onSpoken = (language: Language): void => {
    if (language === this.#spoken) return
    const isFirst = this.#spoken === null && language === this.#settings?.language
    this.#spoken = language
    this.dispatchEvent(new CustomEvent('frondline-language', { detail: language, bubbles: true, composed: true }))
    // The region's own names may have a translation.
    if (!isFirst) void this.#fetchRegion()
  }

  readonly #onOnline = (): void => this.#session?.tryAgain()

  #update(): void {
    const settings = readAttributes(name => this.getAttribute(name), {
      defaultService: (this.constructor as typeof PanelElement).defaultService || location.origin,
      pageAddress: document.baseURI,
      pageLanguage: this.closest('[lang]')?.getAttribute('lang') ?? null,
      readerLanguages: navigator.languages,
      warn: (attribute, value, expected) => this.#warn(attribute, value, expected),
    })
    const serviceChanged = settings.service !== this.#settings?.service
    this.#settings = settings
    this.#accent?.replaceSync(accentStyle(settings.accent))
    if (serviceChanged) this.#begin(settings.service)
    if (this.#region === null) void this.#fetchRegion()
    this.#warnOfUnknownDistrict()
    this.#render()
  }

  #begin(base: string): void {
    this.#session?.pause()
    this.#regionRequest?.abort()
    this.#region = null
    this.#service = createCaseService({ base, credentials: 'omit', language: () => this.#spoken ?? this.#settings?.language ?? 'en' })
    const kept = keptLink(base, this.#place ?? '')
    this.#kept = kept
    this.#keptLanguage = keptLanguage(base, this.#place ?? '')
    this.#session = createCaseSession(this.#service, link => this.#kept?.write(link))
    const link = this.#caseLink ?? kept.read()
    if (link !== null) this.#session.load(link)
  }

  async #fetchRegion(): Promise<void> {
    const request = new AbortController()
    this.#regionRequest?.abort()
    this.#regionRequest = request
    const reply = await this.#service?.region(request.signal)
    // Without the region the panel still works; it only cannot offer districts.
    if (reply?.ok !== true || request.signal.aborted) return
    this.#region = reply.value
    this.#warnOfUnknownDistrict()
    this.#render()
  }

  #render(): void {
    const root = this.shadowRoot
    if (root === null || this.#settings === null || this.#session === null || this.#service === null) return
    const { language, district } = this.#settings
    render(
      h(SpokenPanel, {
        key: this.#settings.service,
        session: this.#session, service: this.#service, region: this.#region, district,
        wholePage: this.#caseLink !== null, language, kept: this.#keptLanguage, onSpoken: this.#onSpoken,
      }),
      root)
  }

  #warnOfUnknownDistrict(): void {
    const district = this.#settings?.district ?? null
    const known = this.#region?.districts.map(row => row.district)
    if (district === null || known === undefined || known.includes(district)) return
    this.#warn('district', district, `one of: ${known.join(', ')}`)
  }

  /** Lets timers inside the drawn parts end; the session and its case stay for when the panel comes back. */
  #unmount(): void {
    if (this.shadowRoot !== null) render(null, this.shadowRoot)
  }

  #warn(attribute: PanelAttribute, value: string, expected: string): void {
    const told = `${attribute}=${value}`
    if (this.#warned.has(told)) return
    this.#warned.add(told)
    // The page's author reads the console; nobody else should be bothered with it.
    // eslint-disable-next-line no-console
    console.warn(`<${this.localName}> cannot use ${attribute}="${value}". It expects ${expected}, and goes on without it.`)
  }
}

let panelsSoFar = 0
