import { useLayoutEffect, useRef } from 'preact/hooks'
import { useKeptFields } from '../case/kept-fields.js'

interface WritingLineProps {
  /** Names the field, to keep what is written in it while it is left. */
  readonly place: string
  readonly label: string
  readonly save: string
  readonly disabled: boolean
  readonly short?: boolean
  readonly onSave: (text: string) => void
}

/** One field to write in, saved with Enter: a note, more words, a line's number. */
export function WritingLine({ place, label, save, disabled, short = false, onSave }: WritingLineProps) {
  const [{ text }, keep] = useKeptFields(place, { text: '' }, 'tab')
  const field = useRef<HTMLInputElement>(null)
  useLayoutEffect(() => field.current?.focus(), [])
  return (
    <form class="step writing" onSubmit={event => { event.preventDefault(); if (text.trim() !== '' && !disabled) onSave(text.trim()) }}>
      <div class={short ? 'field short' : 'field'}>
        <label for="writing-line">{label}</label>
        <input id="writing-line" ref={field} type="text" inputMode={short ? 'numeric' : 'text'} autocomplete="off" maxLength={4000} value={text} onInput={event => keep({ text: event.currentTarget.value })} />
      </div>
      <p class="row"><button type="submit" class="second" disabled={disabled}>{save}<kbd>Enter</kbd></button> <span class="hint"><kbd>Esc</kbd> leaves it; what you wrote is kept</span></p>
    </form>
  )
}
