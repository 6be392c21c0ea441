import { useState } from 'preact/hooks'
import { LONGEST_WORDS } from '../case/longest-words.js'
import { useSheetWording } from '../wording/sheet-language.js'

/** A folded place at the foot of the sheet for what the asker noticed since. */
export function MoreWords({ disabled, onAdd }: { readonly disabled: boolean, readonly onAdd: (words: string) => void }) {
  const words = useSheetWording().more
  const [typed, setTyped] = useState('')
  function submit(event: Event): void {
    event.preventDefault()
    if (typed.trim() === '') return
    onAdd(typed.trim())
    setTyped('')
  }
  return (
    <details class="more">
      <summary>{words.title}</summary>
      <form onSubmit={submit}>
        <label for="more-words">{words.label}</label>
        <textarea id="more-words" class="ruled" rows={2} maxLength={LONGEST_WORDS} value={typed} onInput={event => setTyped(event.currentTarget.value)} />
        <button type="submit" class="second" disabled={disabled}>{words.submit}</button>
      </form>
    </details>
  )
}
