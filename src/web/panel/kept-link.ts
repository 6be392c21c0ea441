/**
 * The case link, kept for the life of the browser tab so that a reload goes on with the same sheet. No cookies.
 * Storage may be closed to the page (a sandboxed frame, a strict setting): the panel then simply does not remember.
 */
export interface KeptLink {
  read(): string | null
  write(link: string | null): void
}

/** `place` tells panels of one page apart: the panel's own id, or its number on the page. */
export function keptLink(service: string, place: string): KeptLink {
  const key = `frondline ${service} ${place}`
  return {
    read() {
      try { return sessionStorage.getItem(key) } catch { return null }
    },
    write(link) {
      try {
        if (link === null) sessionStorage.removeItem(key)
        else sessionStorage.setItem(key, link)
      } catch { /* Not remembering is what this panel then does. */ }
    },
  }
}
