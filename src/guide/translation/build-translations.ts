import { buildLayWords } from '../build-lay-words.js'
import { OTHER_ANSWERS } from '../drafts.js'
import type { Translation } from '../guide.js'
import type { LinkedGuide } from '../link.js'
import { spreadHearings } from '../word-sets.js'
import { idOf, type Original, slotName } from './texts-of.js'

/**
 * The words of every language that any file is translated into, by language.
 * Words that are out of date are kept: they are nearer to an asker than a language they cannot read.
 */
export function buildTranslations(
  linked: LinkedGuide, numbers: { readonly host: ReadonlyMap<string, number>; readonly redFlag: ReadonlyMap<string, number> },
): ReadonlyMap<string, Translation> {
  const languages = [...new Set([...linked.translations.map(({ draft }) => draft.language), ...linked.languageWords.map(({ language }) => language)])].sort()
  return new Map(languages.map((language) => [language, buildTranslation(linked, numbers, language)]))
}

function buildTranslation(linked: LinkedGuide, numbers: Parameters<typeof buildTranslations>[1], language: string): Translation {
  const held = linked.translations.filter(({ draft }) => draft.language === language)
  const words = linked.languageWords.filter((draft) => draft.language === language).map((draft) => draft.words)
  const layWords = words.find((draft) => draft.kind === 'lay words') ?? null
  const sets = words.find((draft) => draft.kind === 'word sets')?.sets ?? new Map<string, readonly string[]>()
  const hear = Array.from(numbers.redFlag, () => [] as ReturnType<typeof spreadHearings>)
  for (const { draft } of held) {
    const number = draft.of === 'red flag' ? numbers.redFlag.get(draft.id.value) : undefined
    if (number !== undefined) hear[number] = spreadHearings(draft.hear, sets)
  }
  const texts = held.flatMap(({ original, texts: some }) => some.flatMap(({ slot, words: said }) =>
    (said === null || slot.kind === 'hearings' ? []
      : pathsMeant(linked, original, slot.path).map((path) => [slotName(original.kind, idOf(original), path), said] as const))))
  return {
    language, hear, layWords: buildLayWords(layWords),
    texts: new Map([...texts].sort(([a], [b]) => (a < b ? -1 : 1))),
    completeHosts: held.filter(({ draft }) => draft.of === 'host' && draft.complete)
      .flatMap(({ draft }) => numbers.host.get(draft.id.value) ?? []).sort((a, b) => a - b),
  }
}

/** The compiled guide has no *other answers*: what is said of them is said of each answer that the node does not name. */
function pathsMeant(linked: LinkedGuide, original: Original, path: readonly string[]): (readonly string[])[] {
  const [nodes, name, answers, label, ...rest] = path
  if (original.kind !== 'host' || nodes === undefined || name === undefined || answers === undefined || label !== OTHER_ANSWERS) return [path]
  const node = original.nodes.find((one) => one.name.value === name)
  const named = new Set(node?.answers.map((answer) => answer.label.value))
  const all = linked.checks.get(node?.check.value ?? '')?.answers.map((answer) => answer.label.value) ?? []
  return all.filter((one) => !named.has(one)).map((one) => [nodes, name, answers, one, ...rest])
}
