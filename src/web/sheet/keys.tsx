import { useEffect, useRef, useState } from 'preact/hooks'

/** Something a key does now. Every one is also a button with its key on it. */
export interface KeyAction {
  /** One character as shown; letters are matched in either case. */
  readonly key: string
  readonly words: string
  readonly run: () => void
}

interface KeysInUse {
  /** False when the person turned plain keys off, as WCAG 2.2 (2.1.4) asks us to allow. */
  readonly on: boolean
  readonly turn: (on: boolean) => void
}

/**
 * Lets plain keys work the page while no field has the focus. Escape always leaves a field, or calls `onEscape`.
 * Plain keys can be turned off; the choice is kept on this machine.
 */
export function useKeys(actions: readonly KeyAction[], onEscape: () => void): KeysInUse {
  const [on, setOn] = useState(readChoice)
  const latest = useRef({ actions, onEscape, on })
  latest.current = { actions, onEscape, on }

  useEffect(() => {
    function press(event: KeyboardEvent): void {
      const { actions, onEscape, on } = latest.current
      if (event.key === 'Escape') {
        const field = document.activeElement
        if (isField(field) && field instanceof HTMLElement) field.blur()
        onEscape()
        return
      }
      if (!on || event.repeat || event.ctrlKey || event.altKey || event.metaKey || isField(event.target)) return
      const action = actions.find(candidate => candidate.key.toLowerCase() === event.key.toLowerCase())
      if (action === undefined) return
      event.preventDefault()
      action.run()
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [])

  return {
    on,
    turn(next) {
      setOn(next)
      try { localStorage.setItem(CHOICE, next ? 'on' : 'off') } catch { /* Then the choice lasts until the page is left. */ }
    },
  }
}

/** The keys that work now, as buttons. */
export function KeyBoard({ actions, keys }: { readonly actions: readonly KeyAction[], readonly keys: KeysInUse }) {
  return (
    <section class="key-board" aria-labelledby="key-board-title">
      <h2 id="key-board-title">Keys</h2>
      <ul>
        {actions.map(action => (
          <li key={action.key}><button type="button" onClick={action.run}><kbd>{action.key}</kbd> {action.words}</button></li>
        ))}
        <li class="escape"><kbd>Esc</kbd> leave a field or an open form</li>
      </ul>
      <label class="key-switch"><input type="checkbox" checked={keys.on} onChange={event => keys.turn(event.currentTarget.checked)} /> Plain keys are on</label>
      <p class="hint">While you type in a field, keys only type.</p>
    </section>
  )
}

function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
    || (target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio')
}

function readChoice(): boolean {
  try { return localStorage.getItem(CHOICE) !== 'off' } catch { return true }
}

const CHOICE = 'frondline plain keys'
