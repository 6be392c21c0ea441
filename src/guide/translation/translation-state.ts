import type { LinkedGuide } from '../link.js'
import { filesOfHost } from './files-of-host.js'
import { type Original, textsOf } from './texts-of.js'
import type { HeldText, HeldTranslation } from './translation-draft.js'

/** How far one file of the guide is translated. */
export interface FileState {
  readonly original: Original
  /** Null when there is no file in this language. */
  readonly translation: HeldTranslation | null
  /** Names of the texts that are missing or out of date: "advice → do now". */
  readonly missing: readonly string[]
  readonly outOfDate: readonly string[]
}

/** How far the words of one file stand in a language. A text that need not be there is never missing. */
export function fileState(linked: LinkedGuide, original: Original, language: string): FileState {
  const translation = linked.translations.find((held) => held.original === original && held.draft.language === language) ?? null
  const texts: readonly HeldText[] = translation?.texts ?? []
  return {
    original, translation,
    missing: translation === null
      ? textsOf(original).filter(({ needed }) => needed).map(({ path }) => path.join(' → '))
      : texts.filter(({ state, slot }) => state === 'missing' && slot.needed).map(({ slot }) => slot.path.join(' → ')),
    outOfDate: texts.filter(({ state }) => state === 'out of date').map(({ slot }) => slot.path.join(' → ')),
  }
}

/** One line of the report on a language: a host with all the files it needs, the region, or the red flags. */
export interface LanguageRow {
  readonly name: string
  /** Whether its host's translation says `complete: yes`; for the others, whether all of their files do. */
  readonly claimed: boolean
  readonly files: readonly FileState[]
}

/** How far a guide is translated into a language, host by host, with the region and the red flags first. */
export function languageRows(linked: LinkedGuide, language: string): LanguageRow[] {
  const rowOf = (name: string, originals: readonly Original[], claims: (files: readonly FileState[]) => boolean): LanguageRow => {
    const files = originals.map((original) => fileState(linked, original, language))
    return { name, files, claimed: claims(files) }
  }
  const all = (files: readonly FileState[]): boolean => files.every(({ translation }) => translation?.draft.complete === true)
  return [
    rowOf('region', linked.region === null ? [] : [linked.region], all),
    rowOf('red-flags', [...linked.redFlags.values()], all),
    ...[...linked.hosts.keys()].sort().map((host) => rowOf(host, filesOfHost(linked, host), ([own]) => own?.translation?.draft.complete === true)),
  ]
}

/** The originals that a name stands for: a host with all its files, `region`, `red-flags`, or one file as `checks/leaf-spots`. */
export function originalsNamed(linked: LinkedGuide, name: string): Original[] {
  const [folder, id] = name.includes('/') ? name.replace(/\.ya?ml$/, '').split('/').slice(-2) : [null, name]
  switch (folder) {
    case 'checks': return one(linked.checks, id)
    case 'problems': return one(linked.problems, id)
    case 'hosts': return one(linked.hosts, id)
    case 'red-flags': return one(linked.redFlags, id)
    case null:
      if (name === 'region') return linked.region === null ? [] : [linked.region]
      if (name === 'red-flags') return [...linked.redFlags.values()]
      return filesOfHost(linked, name)
    default: return []
  }
}

function one(drafts: ReadonlyMap<string, Original>, id: string | undefined): Original[] {
  const found = drafts.get(id ?? '')
  return found === undefined ? [] : [found]
}
