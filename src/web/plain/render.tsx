import { renderToString } from 'preact-render-to-string'
import { en } from '../wording/en.js'
import { enPlain } from '../wording/en-plain.js'
import type { PlainPage } from './page.js'
import { PlainCase } from './plain-case.js'
import { PlainOpening } from './plain-opening.js'

export interface RenderedPage {
  /** The title of the page: what it is at, since a reader that speaks reads that first. */
  readonly title: string
  /** The sheet as HTML; everything that people wrote is escaped. */
  readonly html: string
}

/** Draws one page without script. Pure: the same page makes the same text. */
export function renderPlain(page: PlainPage): RenderedPage {
  const { region } = page
  const html = renderToString(
    <section class="sheet" aria-labelledby="sheet-title">
      <header class="sheet-head">
        <h1 id="sheet-title">{en.sheetTitle}</h1>
        <p class="sheet-by">{region.helpline}</p>
        {region.demonstration && <p class="sheet-demo">{en.demonstration}</p>}
      </header>
      {page.kind === 'opening' ? <PlainOpening {...page} /> : <PlainCase page={page} />}
    </section>,
  )
  return { title: `${titleOf(page)} – ${region.helpline}`, html }
}

function titleOf(page: PlainPage): string {
  const words = enPlain.title
  if (page.kind === 'opening') return page.gone ? words.gone : page.fault === null ? words.opening : words.refused
  const { view, aside, fault } = page
  if (fault !== null) return words.refused
  if (aside?.kind === 'line') return words.check(aside.check.ask)
  if (aside?.kind === 'specialist') return words.handOver
  if (aside !== null) return words.place
  if (view.ticket?.reply != null) return words.reply
  if (view.ticket !== null) return words.waiting
  switch (view.step.kind) {
    case 'red-flag': return words.card
    case 'place': return words.place
    case 'ask': return words.check(view.step.check.ask)
    case 'conclude': return words.conclude(view.step.card.name)
    case 'hand-over': return words.handOver
  }
}
