import { renderToString } from 'preact-render-to-string'
import type { Language } from '../../../shared/index.js'
import { UntranslatedProvider } from '../case/told.js'
import { languages, SpokenProvider } from '../wording/language.js'
import { plainWordings, spokenOnPages } from '../wording/plain-language.js'
import type { PlainPage } from './page.js'
import { PlainCase } from './plain-case.js'
import { PlainForm } from './plain-form.js'
import { PlainOpening } from './plain-opening.js'

export interface RenderedPage {
  readonly language: Language
  /** The title of the page: what it is at, since a reader that speaks reads that first. */
  readonly title: string
  /** The sheet as HTML; everything that people wrote is escaped. */
  readonly html: string
}

/** Draws one page without script. Pure: the same page makes the same text. */
export function renderPlain(page: PlainPage): RenderedPage {
  const { region } = page
  const language = languageOf(page)
  const spoken = spokenOnPages[language]
  const untranslated = page.kind === 'case' ? new Set([...page.view.untranslated ?? [], ...page.untranslated]) : new Set<string>()
  const html = renderToString(
    <SpokenProvider value={spoken}><UntranslatedProvider value={untranslated}>
      <section class="sheet" aria-labelledby="sheet-title">
        <header class="sheet-head">
          <h1 id="sheet-title">{spoken.wording.sheetTitle}</h1>
          <p class="sheet-by">{region.helpline}</p>
          {region.demonstration && <p class="sheet-demo">{spoken.wording.demonstration}</p>}
          <LanguageChoice page={page} />
        </header>
        {page.kind === 'opening' ? <PlainOpening {...page} /> : <PlainCase page={page} />}
      </section>
    </UntranslatedProvider></SpokenProvider>,
  )
  return { language, title: `${titleOf(page)} – ${region.helpline}`, html }
}

function languageOf(page: PlainPage): Language {
  return page.kind === 'case' ? page.view.language : page.language
}

/** The other languages, each by its own name: a link on the empty sheet, a change of the case on an open one. */
function LanguageChoice({ page }: { readonly page: PlainPage }) {
  const others = (Object.keys(languages) as Language[]).filter(language => language !== languageOf(page))
  return (
    <div class="languages" role="group" aria-label={spokenOnPages[languageOf(page)].wording.languageLabel}>
      {others.map(language => page.kind === 'opening'
        ? <a key={language} href={`/ask?language=${language}`} lang={language} hreflang={language}>{languages[language]}</a>
        : (
          <PlainForm key={language} link={page.view.link} change="language" revision={page.view.revision}>
            <button type="submit" name="language" value={language} class="quiet" lang={language}>{languages[language]}</button>
          </PlainForm>
        ))}
    </div>
  )
}

function titleOf(page: PlainPage): string {
  const words = plainWordings[languageOf(page)].title
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
