import './page.css'
import type { PanelElement } from '../panel/panel-element.js'

/** The page of a private link: the link stands behind the '#', so it never reaches a log on the way. */
async function showCase(): Promise<void> {
  await customElements.whenDefined('frondline-panel')
  const main = document.querySelector('#page')
  const panel = document.createElement('frondline-panel') as PanelElement
  // The page has no language of its own: it speaks that of the sheet.
  document.documentElement.removeAttribute('lang')
  panel.addEventListener('frondline-language', event => { if (event instanceof CustomEvent) speak(String(event.detail)) })
  panel.caseLink = linkInAddress()
  main?.append(panel)
  window.addEventListener('hashchange', () => { panel.caseLink = linkInAddress() })
}

/** Names the page in the language of its sheet. */
function speak(language: string): void {
  document.documentElement.lang = language
  const title = TITLES[language] ?? document.title
  document.title = title
  const heading = document.querySelector('h1')
  if (heading !== null) heading.textContent = title
}

const TITLES: Readonly<Record<string, string>> = { en: 'Your plant question sheet', es: 'Su ficha de consulta sobre plantas' }

/** Links typed from paper may come without the '#'. */
function linkInAddress(): string {
  return location.hash === '' ? location.pathname.replace(/^\/case\/?/, '') : location.hash.slice(1)
}

void showCase()
