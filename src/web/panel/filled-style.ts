import { useLayoutEffect, useRef } from 'preact/hooks'
import filled from '../filled.css?inline'

let shared: CSSStyleSheet | null = null

/** Gives the panel that holds the element the styles of an open case, before it is painted. */
export function useFilledStyle() {
  const element = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const root = element.current?.getRootNode()
    if (!(root instanceof ShadowRoot)) return
    if (shared === null) {
      shared = new CSSStyleSheet()
      shared.replaceSync(filled)
    }
    if (!root.adoptedStyleSheets.includes(shared)) root.adoptedStyleSheets.push(shared)
  }, [])
  return element
}
