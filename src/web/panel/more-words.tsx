import { LONGEST_WORDS } from '../case/longest-words.js'
import { useSentWords } from '../case/use-sent-words.js'
import { useSheetWording } from '../wording/sheet-language.js'

interface MoreWordsProps {
  readonly disabled: boolean
  /** How many times the asker has written so far. */
  readonly wordsSoFar: number
  readonly onAdd: (words: string) => void
}

/** A folded place at the foot of the sheet for what the asker noticed since. */
export function MoreWords({ disabled, wordsSoFar, onAdd }: MoreWordsProps) {
  const words = useSheetWording().more
  const { typed, type, send } = useSentWords(wordsSoFar)
  return (
    <details class="more">
      <summary>{words.title}</summary>
      <form onSubmit={event => { event.preventDefault(); if (!disabled) send(onAdd) }}>
        <label for="more-words">{words.label}</label>
        <textarea id="more-words" class="ruled" rows={2} maxLength={LONGEST_WORDS} value={typed} onInput={event => type(event.currentTarget.value)} />
        <button type="submit" class="second" disabled={disabled}>{words.submit}</button>
      </form>
    </details>
  )
}
