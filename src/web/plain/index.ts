export { renderPlain, type RenderedPage } from './render.js'
export { NOW, plainAddress, type CasePage, type OpeningPage, type PlainAside, type PlainFault, type PlainPage, type Typed } from './page.js'
export { plainFaults, type PlainFaultName } from './plain-faults.js'
export { renderSeeing, type SeeingPage } from './seeing.js'
