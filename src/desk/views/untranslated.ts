import type { Guide } from '../../guide/index.js'

/**
 * The texts of a view that stand in the guide's own language among others, each once.
 * @param guide the guide in the language of the view
 * @param own the guide as it was written
 */
export function untranslatedIn(guide: Guide, own: Guide, view: unknown): string[] {
  if (guide.language === own.language) return []
  const phrases = phrasesOf(own)
  const found = new Set<string>()
  const look = (part: unknown): void => {
    if (typeof part === 'string') {
      if (guide.untranslated.has(part) || phrases.has(part)) found.add(part)
    } else if (Array.isArray(part)) part.forEach(look)
    else if (typeof part === 'object' && part !== null) Object.values(part).forEach(look)
  }
  look(view)
  return [...found]
}

/** A view, with the texts in it that have no translation. */
export function withUntranslated<View extends object>(guide: Guide, own: Guide, view: View): View & { untranslated?: string[] } {
  const untranslated = untranslatedIn(guide, own, view)
  return untranslated.length === 0 ? view : { ...view, untranslated }
}

/**
 * The phrase in which a complaint is shown: what was heard where that is in the language of the guide given, else the first
 * phrase in that language, else what was heard.
 * @param heard the phrase that the words came nearest to, in whatever language; null where the complaint was chosen
 */
export function phraseShown(own: Guide, entry: readonly string[], heard: string | null): string | null {
  const ownPhrases = phrasesOf(own)
  const inLanguage = entry.filter((phrase) => !ownPhrases.has(phrase))
  // The guide as it was written has its own phrases only; what was heard there may also be the name of a garden job.
  if (inLanguage.length === 0) return heard ?? entry[0] ?? null
  return heard !== null && inLanguage.includes(heard) ? heard : inLanguage[0] ?? heard
}

const phraseSets = new WeakMap<Guide, ReadonlySet<string>>()

/** Every phrase at which a complaint may start, as the guide was written. */
function phrasesOf(own: Guide): ReadonlySet<string> {
  const known = phraseSets.get(own)
  if (known !== undefined) return known
  const phrases = new Set(own.hosts.flatMap(({ nodes }) => nodes.flatMap(({ entry }) => entry)))
  phraseSets.set(own, phrases)
  return phrases
}
