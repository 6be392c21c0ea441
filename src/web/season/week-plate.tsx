import type { ProblemSeason } from '../../../shared/index.js'
import { inShort } from './numbers.js'
import { Plate, type Plot } from './plate.js'
import { weekInWords } from '../wording/day.js'

interface WeekPlateProps {
  readonly season: ProblemSeason
  readonly place: string
}

/** One problem's year by week, over the band in which the same weeks of earlier years lie. */
export function WeekPlate({ season, place }: WeekPlateProps) {
  const { weeks, name } = season
  return (
    <Plate
      title={`${name}${season.watch ? ' (to be reported)' : ''}`}
      says={inWords(season)}
      of={season}
      draw={(plot, width) => drawn(plot, width, season)}
      file={`${season.problem}-by-week-${place}`}
      table={{
        heads: ['week', 'from', 'reports', 'cases', 'settled', 'usual', 'usual, low', 'usual, high', 'earlier years'],
        rows: weeks.map(week => [
          week.week, week.monday, inShort(week.reports), week.cases, week.settled,
          ...(week.usual === null ? [null, null, null, 0] : [inShort(week.usual.mean), inShort(week.usual.low), inShort(week.usual.high), week.usual.years]),
        ]),
      }}
    />
  )
}

function inWords({ weeks, rise }: ProblemSeason): string {
  const last = weeks.at(-1)
  if (last === undefined) return ''
  const { usual } = last
  const now = `${weekInWords(last.monday)}: ${inShort(last.reports)} ${last.reports === 1 ? 'report' : 'reports'}`
  const before = usual === null ? 'no earlier year on record' : `in earlier years ${inShort(usual.mean)} on average, likely between ${inShort(usual.low)} and ${inShort(usual.high)}`
  return `${now}; ${before}.${rise.unusual ? ' An unusual rise.' : ''}`
}

function drawn(plot: Plot, width: number, { weeks, rise }: ProblemSeason): Element {
  const rows = weeks.map(week => ({ ...week, day: new Date(week.monday) }))
  const usual = rows.flatMap(({ day, usual }) => usual === null ? [] : [{ day, ...usual }])
  const last = rows.at(-1)
  // A scale of its own, so that small counts can be read; never so large that one report looks like a flood.
  const most = Math.max(LEAST_SCALE, ...rows.map(({ reports }) => reports), ...usual.map(({ mean, high }) => Math.max(mean, Math.min(high, MOST_BAND))))
  return plot.plot({
    width, height: 130, marginLeft: 34, marginBottom: 34, marginTop: 14, marginRight: 6,
    x: { type: 'utc', label: null, ticks: width < 400 ? 4 : 8 },
    y: { label: null, domain: [0, most], ticks: 3, grid: false },
    marks: [
      plot.areaY(usual, { x: 'day', y1: 'low', y2: 'high', fill: 'var(--rule)', fillOpacity: .7, curve: 'step', clip: true }),
      plot.lineY(usual, { x: 'day', y: 'mean', stroke: 'var(--ink-soft)', strokeDasharray: '3,3', curve: 'step' }),
      plot.ruleX(rows, { x: 'day', y1: 0, y2: 'reports', stroke: 'var(--bar)', strokeWidth: Math.max(1.5, width / 120) }),
      ...(rise.unusual && last !== undefined ? [plot.text([last], { x: 'day', y: 'reports', text: () => '▲', dy: -9, fill: 'var(--alarm)', fontSize: 12 })] : []),
      plot.ruleY([0], { stroke: 'var(--rule-strong)' }),
    ],
  })
}

const LEAST_SCALE = 5
/** A band may run out of the top of the drawing: it is wide where records are few. */
const MOST_BAND = 8
