import { useLayoutEffect, useRef } from 'preact/hooks'

/**
 * Moves focus to the heading whenever `key` changes, but not when the part first appears. Done as it is drawn: a moment
 * later it could take the focus out of a field that was opened meanwhile.
 */
export function useFocusAfter(key: string, heading: { readonly current: HTMLHeadingElement | null }): void {
  const last = useRef(key)
  useLayoutEffect(() => {
    if (last.current === key) return
    last.current = key
    const title = heading.current
    if (title === null) return
    title.focus({ preventScroll: true })
    // A heading low on the screen would hide what it heads: bring it up, but leave alone what can be read already.
    const { top } = title.getBoundingClientRect()
    if (top < 0 || top > window.innerHeight / 2) title.scrollIntoView({ block: 'start' })
  }, [key])
}
