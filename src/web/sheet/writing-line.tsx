import { useLayoutEffect, useRef, useState } from 'preact/hooks'

interface WritingLineProps {
  readonly label: string
  readonly save: string
  readonly disabled: boolean
  readonly short?: boolean
  readonly onSave: (text: string) => void
}

/** One field to write in, saved with Enter: a note, more words, a line's number. */
export function WritingLine({ label, save, disabled, short = false, onSave }: WritingLineProps) {
  const [text, setText] = useState('')
  const field = useRef<HTMLInputElement>(null)
  useLayoutEffect(() => field.current?.focus(), [])
  return (
    <form class="step writing" onSubmit={event => { event.preventDefault(); if (text.trim() !== '' && !disabled) onSave(text.trim()) }}>
      <div class={short ? 'field short' : 'field'}>
        <label for="writing-line">{label}</label>
        <input id="writing-line" ref={field} type="text" inputMode={short ? 'numeric' : 'text'} autocomplete="off" maxLength={4000} value={text} onInput={event => setText(event.currentTarget.value)} />
      </div>
      <p class="row"><button type="submit" class="second" disabled={disabled}>{save}<kbd>Enter</kbd></button> <span class="hint"><kbd>Esc</kbd> leaves it</span></p>
    </form>
  )
}
