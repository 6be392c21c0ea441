import { PanelElement } from './panel-element.js'

/** Registers the panel as `frondline-panel`; a page that loads the script twice is none the worse. */
export function definePanel(tag = 'frondline-panel', registry: CustomElementRegistry | undefined = globalThis.customElements): void {
  if (registry === undefined || registry.get(tag) !== undefined) return
  registry.define(tag, PanelElement)
}

// Only a classic script knows its own address, and only while it first runs.
const script = typeof document === 'undefined' ? null : document.currentScript
if (script instanceof HTMLScriptElement && script.src !== '') PanelElement.defaultService = new URL('.', script.src).href.replace(/\/+$/, '')
definePanel()

declare global {
  interface HTMLElementTagNameMap {
    'frondline-panel': PanelElement
  }
}
