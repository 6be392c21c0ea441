import tokens from '../tokens.css?inline'
import sheet from '../sheet.css?inline'
import panel from './panel.css?inline'
import type { AccentPair } from './accent.js'

let shared: CSSStyleSheet | null = null

/** The panel's styles, one sheet for all panels of a page. A constructed sheet needs no leave from the host page's CSP. */
export function panelStyle(): CSSStyleSheet {
  if (shared === null) {
    shared = new CSSStyleSheet()
    shared.replaceSync(tokens + sheet + panel)
  }
  return shared
}

/** A host page's accent as a style sheet; people who ask for more contrast keep ours. */
export function accentStyle(accent: AccentPair | null): string {
  return accent === null ? '' : `@media not (prefers-contrast: more) { .frondline { --accent: light-dark(${accent.light}, ${accent.dark}) } }`
}
