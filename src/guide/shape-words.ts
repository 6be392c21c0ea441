import type { LayWordsDraft, WordSetsDraft } from './drafts.js'
import { fit, placing } from './fit-shape.js'
import type { ParsedFile, Report } from './parse.js'
import { setsIn } from './shape-hearings.js'
import { layWordsShape, wordSetsShape } from './yaml-shapes.js'

/** The draft of a lay-words file. */
export function shapeLayWords(parsed: ParsedFile, report: Report): LayWordsDraft | null {
  const value = fit(layWordsShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  return {
    kind: 'lay words',
    at: parsed.keyAt(['alike']),
    alike: value.alike.map((group, index) => here.texts(group, ['alike', index])),
    otherPlants: here.texts(value['other plants'], ['other plants']),
    things: here.texts(value.things, ['things']),
    grounds: here.texts(value.grounds, ['grounds']),
    errands: here.texts(value.errands, ['errands']),
    kinds: new Map(Object.entries(value.kinds ?? {}).map(([name, words]) => [name, here.texts(words, ['kinds', name])])),
  }
}

/** The draft of a word-sets file. */
export function shapeWordSets(parsed: ParsedFile, report: Report): WordSetsDraft | null {
  const value = fit(wordSetsShape, parsed, report)
  if (value === null) return null
  const here = placing(parsed)
  const setsUsed = Object.entries(value).flatMap(([name, words]) => setsIn(words, [name])).map(({ name, path }) => here.text(name, path))
  const groupWords = Object.entries(value).flatMap(([name, words]) => here.texts(words, [name]))
  return { kind: 'word sets', at: parsed.at([]), sets: new Map(Object.entries(value)), setsUsed, groupWords }
}
