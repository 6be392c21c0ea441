import type { MIN_PASSWORD } from '../../../shared/index.js'

interface NewPasswordProps {
  readonly next: string
  readonly again: string
  readonly onNext: (next: string) => void
  readonly onAgain: (again: string) => void
}

/** A new password, written twice. */
export function NewPassword({ next, again, onNext, onAgain }: NewPasswordProps) {
  return (
    <>
      <div class="field short">
        <label for="next-password">New password</label>
        <input id="next-password" type="password" autocomplete="new-password" maxLength={200} value={next} aria-describedby="next-password-hint" onInput={event => onNext(event.currentTarget.value)} />
        <p class="hint" id="next-password-hint">At least {SHORTEST} characters. A few words that do not belong together are good.</p>
      </div>
      <div class="field short"><label for="again-password">The same once more</label><input id="again-password" type="password" autocomplete="new-password" maxLength={200} value={again} onInput={event => onAgain(event.currentTarget.value)} /></div>
    </>
  )
}

/** What is wrong with a new password as far as the screen can tell, or null. */
export function passwordFault(next: string, again: string): string | null {
  if (next.length < SHORTEST) return `Please take at least ${SHORTEST} characters.`
  return next === again ? null : 'The two are not the same. Please write the new password twice.'
}

/** Only the type comes from `shared`: its schemas stay out of the browser. */
const SHORTEST: typeof MIN_PASSWORD = 12
