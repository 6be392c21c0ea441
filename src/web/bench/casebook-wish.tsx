import type { SettleReview } from '../../../shared/index.js'

interface CasebookWishProps {
  readonly review: SettleReview
  /** The words to keep, or null when the case is not to be kept. */
  readonly words: string | null
  readonly onWords: (words: string | null) => void
}

/** Keeps the case for the casebook, with its words as they will stand there: read and cleaned by a person, not by us alone. */
export function CasebookWish({ review, words, onWords }: CasebookWishProps) {
  const { casebook, whyNoCasebook } = review
  if (casebook === null) return whyNoCasebook === null ? null : <p class="hint">No casebook case: {whyNoCasebook}</p>
  return (
    <fieldset class="leaves">
      <legend>Casebook</legend>
      <label class="check-pick">
        <input type="checkbox" checked={words !== null} onChange={event => onWords(event.currentTarget.checked ? casebook.words : null)} />
        <span>Keep this case, so that the guide is tested with it</span>
      </label>
      {words !== null && (
        <>
          <div class="field">
            <label for="casebook-words">The words as they will stand there</label>
            <textarea id="casebook-words" rows={3} maxLength={4000} value={words} aria-describedby="casebook-hint" onInput={event => onWords(event.currentTarget.value)} />
            <p class="hint" id="casebook-hint">
              {casebook.removed.length === 0 ? 'Nothing personal was found in them.' : `Taken out: ${casebook.removed.map(row => `${row.count} × ${row.kind}`).join(', ')}.`} Please look for names and places yourself as well.
            </p>
          </div>
          <details><summary>The case as it would be written</summary><pre class="yaml" tabIndex={0}>{casebook.yaml}</pre></details>
        </>
      )}
    </fieldset>
  )
}
