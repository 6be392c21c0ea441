// "None is needed" is a sentence already: only a bare "none", or one that a stop ends, is made into words.
const NOTHING = /^none(?:$|[.;:,]\s*)(.*)$/is

/** Whether a problem's advice calls for no spray: authors write 'none', or 'none.' and what to mind. */
export function spraysNothing(spray: string): boolean {
  return NOTHING.test(spray.trim())
}

/**
 * What a problem's advice says of spraying, as whole sentences.
 * @param noSpray the sentence that no spray is needed, in the advice's language
 */
export function sprayInWords(spray: string, noSpray = 'No spray is needed.'): string {
  const [, rest] = NOTHING.exec(spray.trim()) ?? []
  return rest === undefined ? spray : rest === '' ? noSpray : `${noSpray} ${rest}`
}
