/**
 * The language that the asker chose by hand, kept for the life of the browser tab. No cookies. Where storage is closed to
 * the page the panel does not remember.
 */
export interface KeptLanguage {
  read(): string | null
  write(language: string): void
}

/** `place` tells panels of one page apart, as for the kept link. */
export function keptLanguage(service: string, place: string): KeptLanguage {
  const key = `frondline language ${service} ${place}`
  return {
    read() {
      try { return sessionStorage.getItem(key) } catch { return null }
    },
    write(language) {
      try { sessionStorage.setItem(key, language) } catch { /* Not remembering is what this panel then does. */ }
    },
  }
}
