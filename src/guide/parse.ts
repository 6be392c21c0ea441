import { type Document, isAlias, isMap, isNode, isScalar, isSeq, type Node as YamlNode, parseDocument } from 'yaml'
import type { GuideError } from './guide-error.js'
import type { Place, SourceFile } from './source-file.js'

export type YamlPath = readonly (string | number)[]

/** A YAML file as plain values, with a way back from each value to where it was written. */
export interface ParsedFile {
  readonly file: SourceFile
  readonly values: unknown
  /** Where the value at a path stands; the nearest enclosing value when there is none. */
  at(path: YamlPath): Place
  /** Where the key at the end of a path stands. */
  keyAt(path: YamlPath): Place
}

export type Report = (error: GuideError) => void

/**
 * Reads one file's YAML, keeping positions. Syntax faults are reported and, where there is nothing left to go on with,
 * null comes back. Never throws for bad text.
 */
export function parseFile(file: SourceFile, report: Report): ParsedFile | null {
  const start: Place = { file, start: 0, end: 1 }
  let document: Document.Parsed
  let values: unknown
  try {
    document = parseDocument(file.text, { prettyErrors: false, uniqueKeys: true })
    for (const fault of document.errors) {
      report({
        severity: 'error', code: 'YAML', nearest: [],
        message: `This is not YAML as it should be: ${fault.message.trim().replace(/[.:]?$/, '.')} Expected keys and values, one a line, indented by spaces.`,
        at: [{ file, start: fault.pos[0], end: Math.max(fault.pos[0] + 1, fault.pos[1]) }],
      })
    }
    if (document.errors.length > 0) return null
    values = document.toJS({ maxAliasCount: 100 })
  } catch (error) {
    report({
      severity: 'error', code: 'YAML', nearest: [], at: [start],
      message: `This file cannot be read as YAML (${error instanceof Error ? error.message : String(error)}). Expected one plain document without anchors.`,
    })
    return null
  }
  const contents: YamlNode | null = document.contents
  return {
    file, values,
    at: (path) => placeOf(file, nodeAt(document, contents, path)) ?? start,
    keyAt: (path) => {
      const parent = nodeAt(document, contents, path.slice(0, -1))
      const key = path[path.length - 1]
      if (isMap(parent)) {
        const pair = parent.items.find((item) => keyName(item.key) === String(key))
        if (pair !== undefined && isNode(pair.key)) return placeOf(file, pair.key) ?? start
      }
      return placeOf(file, parent) ?? start
    },
  }
}

function nodeAt(document: Document, root: YamlNode | null, path: YamlPath): YamlNode | null {
  let here: YamlNode | null = root
  for (const step of path) {
    const open: YamlNode | null | undefined = isAlias(here) ? here.resolve(document) : here
    let next: unknown = null
    if (isMap(open)) next = open.items.find((item) => keyName(item.key) === String(step))?.value
    else if (isSeq(open) && typeof step === 'number') next = open.items[step]
    if (!isNode(next)) return here
    here = next
  }
  return here
}

function keyName(key: unknown): string {
  return isScalar(key) ? String(key.value) : String(key)
}

function placeOf(file: SourceFile, node: YamlNode | null): Place | null {
  if (node?.range == null) return null
  const [start, end] = node.range
  return { file, start, end: Math.max(end, start + 1) }
}
