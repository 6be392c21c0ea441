import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { CheckCard } from '../../../shared/index.js'
import type { Wording } from '../wording/en.js'
import { useWording } from '../wording/language.js'

/** The language in which the guide is written. A text without a translation stands in it. */
const GUIDE_LANGUAGE = 'en'

const UntranslatedContext = createContext<ReadonlySet<string>>(new Set())
/** The texts of the guide that stand in the guide's own language on this part of the screen. */
export const UntranslatedProvider = UntranslatedContext.Provider

/**
 * A text of the guide. Where it is not in the language around it, it says in which it is, so that a reader that speaks
 * says it rightly (WCAG 2.2, 3.1.2).
 */
export function Told({ text, shown = text }: {
  readonly text: string
  /** As much of the text as is to be shown. */
  readonly shown?: string
}) {
  return useContext(UntranslatedContext).has(text) ? <span lang={GUIDE_LANGUAGE}>{shown}</span> : <>{shown}</>
}

/** Tells the language of a text of the guide where it is another than around it, for what holds no element of its own. */
export function useLanguageOf(): (text: string) => string | undefined {
  const untranslated = useContext(UntranslatedContext)
  return text => untranslated.has(text) ? GUIDE_LANGUAGE : undefined
}

/** An answer of a check in the words that are shown for it. */
export function ToldAnswer({ check, answer }: { readonly check: CheckCard, readonly answer: string }) {
  return <Told text={answerInWords(check, answer, useWording().calm)} />
}

/** Labels of the two answers that every check takes, as the wire spells them. */
export const NOT_SURE = 'not sure'
export const CANT_LOOK = "can't look now"

/** The words shown for an answer: its translation where there is one, else its label. `check` is null where it is not known. */
export function answerInWords(check: Pick<CheckCard, 'shown'> | null, answer: string, calm: Wording['calm']): string {
  return answer === NOT_SURE ? calm.notSure : answer === CANT_LOOK ? calm.cantLook : check?.shown?.[answer] ?? answer
}
