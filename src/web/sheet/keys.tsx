import { useLayoutEffect, useRef, useState } from 'preact/hooks'

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
 * Lets plain keys work the page. A key acts only where its own label stands: the focus must be in a part marked
 * `data-keys` that shows the key, and in no field. Escape always leaves a field, and calls `onEscape`.
 * Plain keys can be turned off; the choice is kept on this machine.
 */
export function useKeys(actions: readonly KeyAction[], onEscape: () => void): KeysInUse {
  const [on, setOn] = useState(readChoice)
  const latest = useRef({ actions, onEscape, on })
  latest.current = { actions, onEscape, on }

  // With the drawing and not after it: a key pressed as soon as the sheet is there must not go by.
  useLayoutEffect(() => {
    function press(event: KeyboardEvent): void {
      const { actions, onEscape, on } = latest.current
      if (event.key === 'Escape') {
        const field = document.activeElement
        if (isField(field) && field instanceof HTMLElement) field.blur()
        onEscape()
        return
      }
      // A key held down would press the button that comes next as well.
      if (event.repeat && event.target instanceof HTMLButtonElement && (event.key === 'Enter' || event.key === ' ')) event.preventDefault()
      if (!on || event.repeat || event.ctrlKey || event.altKey || event.metaKey || isField(event.target)) return
      const action = actions.find(candidate => candidate.key.toLowerCase() === event.key.toLowerCase())
      if (action === undefined || !isShownAround(event.target, action.key)) return
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
    <section class="key-board" aria-labelledby="key-board-title" data-keys>
      <h2 id="key-board-title">Keys</h2>
      <ul>
        {actions.map(action => (
          <li key={action.key}><button type="button" onClick={action.run}><kbd>{action.key}</kbd> {action.words}</button></li>
        ))}
        <li class="escape"><kbd>Esc</kbd> leave a field or an open form, back to the sheet</li>
      </ul>
      <label class="key-switch"><input type="checkbox" checked={keys.on} onChange={event => keys.turn(event.currentTarget.checked)} /> Plain keys are on</label>
      <p class="hint">While you type in a field, keys only type. Outside the sheet and this list they do nothing.</p>
    </section>
  )
}

/** Whether the part of the page that holds this element shows the key. */
function isShownAround(target: EventTarget | null, key: string): boolean {
  const part = target instanceof Element ? target.closest('[data-keys]') : null
  return part !== null && [...part.querySelectorAll('kbd')].some(label => label.textContent === key && label.checkVisibility())
}

function isField(target: EventTarget | null): boolean {
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
    || (target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio')
}

function readChoice(): boolean {
  try { return localStorage.getItem(CHOICE) !== 'off' } catch { return true }
}

const CHOICE = 'frondline plain keys'
