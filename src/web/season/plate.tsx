import { useEffect, useId, useRef, useState } from 'preact/hooks'
import { csvOf, type Table } from './csv.js'

import type * as PlotLibrary from '@observablehq/plot'

/** The plotting library, fetched with the first drawing. */
export type Plot = typeof PlotLibrary

interface PlateProps {
  readonly title: string
  /** What it shows, in a sentence or two: read out in place of the drawing. */
  readonly says: string
  /** Draws it so many pixels wide. */
  readonly draw: (plot: Plot, width: number) => Element
  /** The same in numbers. */
  readonly table: Table
  /** Name of the file it is taken away in, without its ending. */
  readonly file: string
  /** Draws it anew when it changes. */
  readonly of: unknown
}

/** A drawing with its words, its numbers as a table, and those to take away. Without the library the words and numbers stay. */
export function Plate({ title, says, draw, table, file, of }: PlateProps) {
  const id = useId()
  const frame = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  const [plot, setPlot] = useState<Plot | null>(null)

  useEffect(() => {
    let here = true
    void import('@observablehq/plot').then(library => { if (here) setPlot(library) }, () => undefined)
    return () => { here = false }
  }, [])
  useEffect(() => {
    if (frame.current === null) return
    const watch = new ResizeObserver(([entry]) => setWidth(Math.round(entry?.contentRect.width ?? 0)))
    watch.observe(frame.current)
    return () => watch.disconnect()
  }, [])
  useEffect(() => {
    if (plot === null || width === 0 || frame.current === null) return
    const drawn = draw(plot, width)
    // Our style comes from the sheet of styles: one inside the drawing is refused by the service's security policy.
    for (const style of drawn.querySelectorAll('style')) style.remove()
    drawn.setAttribute('aria-hidden', 'true')
    frame.current.replaceChildren(drawn)
  }, [plot, width, of])

  return (
    <figure class="plate" aria-labelledby={`${id}-title`}>
      <figcaption id={`${id}-title`}>{title}</figcaption>
      <p class="says">{says}</p>
      <div class="drawn" ref={frame} />
      <details>
        <summary>The numbers</summary>
        <div class="numbers" tabIndex={0} role="region" aria-label={`${title}: the numbers`}>
          <table>
            <thead><tr>{table.heads.map(head => <th key={head} scope="col">{head}</th>)}</tr></thead>
            <tbody>{table.rows.map((row, place) => <tr key={place}>{row.map((value, column) => column === 0 ? <th key={column} scope="row">{value}</th> : <td key={column}>{value ?? '–'}</td>)}</tr>)}</tbody>
          </table>
        </div>
        <p><button type="button" class="second" onClick={() => takeAway(`${file}.csv`, csvOf(table))}>Save as CSV</button></p>
      </details>
    </figure>
  )
}

function takeAway(name: string, text: string): void {
  // The mark at the front tells spreadsheets that it is UTF-8.
  const address = URL.createObjectURL(new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
