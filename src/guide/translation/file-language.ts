/** What a file's name says: `tomato.es.yaml` holds the words of tomato.yaml in `es`. */
export interface LanguageOfFile {
  /** The name without language: tomato.yaml */
  readonly original: string
  readonly language: string
}

/** The language in the name of a translation file, or null for a file of the guide itself. Ids never hold a full stop. */
export function languageOfFile(name: string): LanguageOfFile | null {
  const [, stem, language, ending] = /^([^.]+)\.([a-z]{2,3}(?:-[A-Za-z0-9]+)*)(\.ya?ml)$/.exec(name) ?? []
  if (stem === undefined || language === undefined || ending === undefined) return null
  return { original: `${stem}${ending}`, language }
}
