import { useEffect, useState } from 'preact/hooks'
import type { Language } from '../../../shared/index.js'
import { useSession } from '../case/use-session.js'
import { spokenLanguage, SpokenProvider } from '../wording/language.js'
import type { KeptLanguage } from './kept-language.js'
import { PanelSheet, type PanelSheetProps } from './panel-sheet.js'
import { useWords } from './use-words.js'

interface SpokenPanelProps extends Omit<PanelSheetProps, 'onLanguage'> {
  /** The language of the page around, until the asker chooses or a case says which it is in. */
  readonly language: Language
  readonly kept: KeptLanguage | null
  /** Told which language is on the screen. */
  readonly onSpoken: (language: Language) => void
}

/**
 * The panel in one language. An open case is in its own, whoever opens its link; before, the asker's choice counts, then
 * the page's language.
 */
export function SpokenPanel({ language, kept, onSpoken, ...sheet }: SpokenPanelProps) {
  const { session } = sheet
  const { view } = useSession(session)
  const [chosen, setChosen] = useState<Language | null>(() => spokenLanguage(kept?.read() ?? ''))
  const spoken = useWords(view?.language ?? chosen ?? language)
  const now = spoken?.language ?? null
  useEffect(() => { if (now !== null) onSpoken(now) }, [now])
  // A sheet begun after this one is in the same language.
  useEffect(() => { if (view !== null) setChosen(view.language) }, [view?.language])

  function choose(wanted: Language): void {
    kept?.write(wanted)
    setChosen(wanted)
    if (view !== null) session.change({ path: 'language', body: { language: wanted } })
  }
  return (
    <div class="frondline" lang={now ?? language} dir="ltr">
      {spoken !== null && <SpokenProvider value={spoken}><PanelSheet {...sheet} onLanguage={choose} /></SpokenProvider>}
    </div>
  )
}
