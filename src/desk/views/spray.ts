const NO_SPRAY = 'No spray is needed.'

/** What a problem's advice says of spraying, as whole sentences: authors write 'none', or 'none.' and what to mind. */
export function sprayInWords(spray: string): string {
  const [, rest] = /^none\b[.;:,]?\s*(.*)$/is.exec(spray.trim()) ?? []
  return rest === undefined ? spray : rest === '' ? NO_SPRAY : `${NO_SPRAY} ${rest}`
}
