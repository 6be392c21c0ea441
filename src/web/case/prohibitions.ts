/** Lines that say what not to do, by whether they can be read alone. */
interface Prohibitions {
  /** They say it themselves: 'Do not rub the eye.' */
  readonly whole: readonly string[]
  /** They say it only under a heading: 'Rub the eye.' */
  readonly bare: readonly string[]
}

/**
 * Sorts the lines of a red flag by whether they need the heading 'Do not'. No line is ever cut or changed: a heading can be
 * skipped by eye or by ear, and half a sentence would then say the opposite.
 */
export function sortProhibitions(lines: readonly string[]): Prohibitions {
  return { whole: lines.filter(saysNoItself), bare: lines.filter(line => !saysNoItself(line)) }
}

function saysNoItself(line: string): boolean {
  return /^(do not|don[’']t|never|you must not|nobody|no one|nothing|avoid)\b/i.test(line.trim())
}
