import './page.css'
import type { PanelElement } from '../panel/panel-element.js'

/** The page of a private link: the link stands behind the '#', so it never reaches a log on the way. */
async function showCase(): Promise<void> {
  await customElements.whenDefined('frondline-panel')
  const main = document.querySelector('#page')
  const panel = document.createElement('frondline-panel') as PanelElement
  panel.caseLink = linkInAddress()
  main?.append(panel)
  window.addEventListener('hashchange', () => { panel.caseLink = linkInAddress() })
}

/** Links typed from paper may come without the '#'. */
function linkInAddress(): string {
  return location.hash === '' ? location.pathname.replace(/^\/case\/?/, '') : location.hash.slice(1)
}

void showCase()
