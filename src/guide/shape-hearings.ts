import type { z } from 'zod'
import type { HearingDraft } from './drafts.js'
import type { placing } from './fit-shape.js'
import type { YamlPath } from './parse.js'
import type { Located } from './source-file.js'
import { wordSetsNamed } from './word-sets.js'
import type { hearShape } from './yaml-shapes.js'

/** "Nobody even ate it", "ate it? no". */
const DEFAULT_UNLESS_REACH = 2
const DEFAULT_WITHIN_WORDS = 12

interface ShapedHearings {
  readonly hear: HearingDraft[]
  /** Word sets named in any group, where they are named. */
  readonly setsUsed: Located<string>[]
  /** Every group word, as written. */
  readonly groupWords: Located<string>[]
}

/** What a red flag listens for, from the `hear` key of its file, with the word sets that it names. */
export function shapeHearings(hear: z.infer<typeof hearShape>, here: ReturnType<typeof placing>): ShapedHearings {
  const groups = hear.flatMap((hearing, at): [readonly string[], YamlPath][] => [
    ...('all of' in hearing ? hearing['all of'].map((group, place): [readonly string[], YamlPath] => [group, ['hear', at, 'all of', place]]) : [[hearing.phrases, ['hear', at, 'phrases']] as [readonly string[], YamlPath]]),
    ...(hearing.unless ?? []).map((group, place): [readonly string[], YamlPath] => [group, ['hear', at, 'unless', place]]),
  ])
  return {
    setsUsed: groups.flatMap(([group, path]) => setsIn(group, path)).map(({ name, path }) => here.text(name, path)),
    groupWords: groups.flatMap(([group, path]) => here.texts(group, path)),
    hear: hear.map((hearing) => ({
      allOf: 'all of' in hearing ? hearing['all of'] : [],
      within: 'all of' in hearing ? hearing.within ?? DEFAULT_WITHIN_WORDS : DEFAULT_WITHIN_WORDS,
      inOrder: 'all of' in hearing && hearing['in order'] === true,
      reach: hearing['unless reach'] ?? DEFAULT_UNLESS_REACH,
      unless: hearing.unless ?? [],
      phrases: 'phrases' in hearing ? hearing.phrases : [],
    })),
  }
}

/** The word sets that a group of words names, with the path of each. */
export function setsIn(group: readonly string[], path: YamlPath): { name: string; path: YamlPath }[] {
  return group.flatMap((word, at) => wordSetsNamed(word).map((name) => ({ name, path: [...path, at] })))
}
