import { LineCounter } from 'yaml'

/** One YAML file as read: its path for messages and its text. */
export interface SourceFile {
  /** Path as an author would type it, with forward slashes: trees/hosts/lettuce.yaml */
  readonly path: string
  readonly text: string
}

/** A stretch of a source file: [start, end) in UTF-16 units. */
export interface Place {
  readonly file: SourceFile
  readonly start: number
  readonly end: number
}

/** A value together with where its author wrote it. */
export interface Located<Value> {
  readonly value: Value
  readonly at: Place
}

/** Line and column, both from 1, of the start of a place. Worked out only when a message is printed. */
export function lineAndColumn(place: Place): { line: number; column: number } {
  const counter = new LineCounter()
  counter.addNewLine(0)
  for (let at = place.file.text.indexOf('\n'); at >= 0 && at < place.start; at = place.file.text.indexOf('\n', at + 1)) {
    counter.addNewLine(at + 1)
  }
  const { line, col } = counter.linePos(place.start)
  return { line, column: col }
}
