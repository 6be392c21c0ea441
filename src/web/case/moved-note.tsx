import type { MovedLine } from '../../../shared/index.js'

/** That the season makes a cause more or less likely here and now, and why; nothing where it does not. */
export function MovedNote({ moved }: { readonly moved: MovedLine | undefined }) {
  if (moved === undefined) return null
  return (
    <p class="hint moved-here">
      <span aria-hidden="true">{moved.direction === 'more' ? '↑' : '↓'}</span> {moved.words.slice(0, 1).toUpperCase()}{moved.words.slice(1)}.
    </p>
  )
}
