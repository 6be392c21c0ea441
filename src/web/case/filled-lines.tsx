import type { ComponentChildren } from 'preact'
import type { Line } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { CANT_LOOK, NOT_SURE, Told, ToldAnswer } from './told.js'

interface FilledLinesProps {
  readonly lines: readonly Line[]
  /** False until the plant is chosen: before that there is no way to be off. */
  readonly placed: boolean
  /** Check whose line is open for a new answer; it is drawn by `openLine`. */
  readonly changing?: string | null
  /** Check that is being asked once more. */
  readonly again?: string | null
  readonly openLine?: (line: Line, number: number) => ComponentChildren
  readonly onChange?: ((line: Line) => void) | undefined
  /** Where a line is changed, on a page without script. */
  readonly changeAddress?: ((line: Line) => string) | undefined
  readonly disabled?: boolean
}

/** The answered checks as numbered, filled-in lines of the sheet, each open to change. */
export function FilledLines({ lines, placed, changing = null, again = null, openLine, onChange, changeAddress, disabled = false }: FilledLinesProps) {
  const words = useSheetWording().lines
  if (lines.length === 0) return null
  // What the asker told by themselves is never called off the way: nobody had shown them one.
  const isOff = (line: Line) => placed && !line.onPath && line.from !== 'said' && counts(line)
  return (
    <ol class="lines" aria-label={words.title}>
      {lines.map((line, place) => line.check.id === changing && openLine !== undefined
        ? <li class="line open" key={line.check.id}>{openLine(line, place + 1)}</li>
        : (
          <li class={isOff(line) ? 'line off-path' : 'line'} key={line.check.id}>
            <span class="number">{place + 1}</span>
            <span class="line-label"><Told text={line.check.ask} /></span>
            <span class="line-answer">
              <span class="written"><ToldAnswer check={line.check} answer={line.answer} /></span>
              {line.from !== 'asked' && <span class="origin">{words.origin[line.from]}</span>}
              {line.check.id === again ? <span class="origin">{words.again}</span> : isOff(line) && <span class="origin">{line.from === 'asked' ? words.sideLook : words.offPath}</span>}
            </span>
            {changeAddress !== undefined && <a href={changeAddress(line)} aria-label={words.changeLine(line.check.ask)}>{words.change}</a>}
            {onChange !== undefined && (
              <button type="button" class="quiet" disabled={disabled} aria-label={words.changeLine(line.check.ask)} onClick={() => onChange(line)}>
                {words.change}
              </button>
            )}
          </li>
        ))}
    </ol>
  )
}

/** Not having looked says nothing, on the way or off it. */
function counts(line: Line): boolean {
  return line.answer !== NOT_SURE && line.answer !== CANT_LOOK
}
