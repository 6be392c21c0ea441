import { PanelElement } from './panel-element.js'

/** Registers the panel as `frondline-panel`; a page that loads the script twice is none the worse. */
export function definePanel(tag = 'frondline-panel', registry: CustomElementRegistry | undefined = globalThis.customElements): void {
  if (registry === undefined || registry.get(tag) !== undefined) return
  registry.define(tag, PanelElement)
}

// The modules of the panel stand in a folder of the service. (Written in two steps: a bundler takes the short form for a file.)
const here = import.meta.url
PanelElement.defaultService = new URL('..', here).href.replace(/\/+$/, '')
definePanel()

declare global {
  interface HTMLElementTagNameMap {
    'frondline-panel': PanelElement
  }
}
