import type { DistrictWeather, HeatCurve, StationWeather } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'
import { Plate, type Plot } from './plate.js'
import { inShort } from './numbers.js'

/** The weather of a district by its station's records: rain, warmth, and days on which diseases can have come. */
export function WeatherPart({ weather }: { readonly weather: DistrictWeather }) {
  const { station, districtName, district } = weather
  if (station === null) {
    return <p>No weather station is known for {districtName}. An administrator of the service adds one: <code>npx frondline weather station add --help</code>.</p>
  }
  return (
    <>
      <p>{station.name}. {station.lastRecorded === null ? 'No records yet.' : `Records up to ${dayInWords(station.lastRecorded)}.`}</p>
      <Gaps station={station} />
      <RainBars station={station} district={district} />
      {station.heat.map(curve => <HeatPlate key={curve.how} curve={curve} district={district} />)}
      <Infection station={station} />
    </>
  )
}

/** Missing days and hours, by name: nothing was made up for them. */
function Gaps({ station: { missing } }: { readonly station: StationWeather }) {
  const parts = [
    ['without temperatures', missing.temperatureDays], ['without rain', missing.rainDays], ['without any hour', missing.hourlessDays],
    ['with some hours missing', missing.partDays.map(({ day }) => day)],
  ] as const
  const lacking = parts.filter(([, days]) => days.length > 0)
  if (lacking.length === 0) return <p class="hint">Nothing is missing in the last six weeks.</p>
  return (
    <details class="gaps">
      <summary>Missing in the last six weeks: {lacking.map(([what, days]) => `${days.length} ${days.length === 1 ? 'day' : 'days'} ${what}`).join(', ')}</summary>
      <ul>{lacking.map(([what, days]) => <li key={what}>{what}: {days.map(day => dayInWords(day)).join(', ')}</li>)}</ul>
      <p class="hint">Nothing is filled in for them. Sums are “at least”, and what hangs on them is left open.</p>
    </details>
  )
}

function RainBars({ station, district }: { readonly station: StationWeather, readonly district: string }) {
  const { week, month, byDay } = station.rain
  const says = `${sumInWords(week)}; ${sumInWords(month)}. A garden needs about 25 mm a week.`
  return (
    <Plate
      title="Rain by day, mm" says={says} of={station} file={`rain-${district}`}
      table={{ heads: ['day', 'rain, mm'], rows: byDay.map(({ day, mm }) => [day, mm]) }}
      draw={(plot, width) => {
        const rows = byDay.map(({ day, mm }) => ({ day: new Date(day), mm }))
        return plot.plot({
          width, height: 150, marginLeft: 34, marginBottom: 34, marginRight: 6,
          x: { type: 'utc', label: null, ticks: width < 400 ? 4 : 8 }, y: { label: null, ticks: 3 },
          marks: [
            plot.ruleX(rows.filter(({ mm }) => mm !== null), { x: 'day', y1: 0, y2: 'mm', stroke: 'var(--bar)', strokeWidth: Math.max(2, width / 60) }),
            plot.text(rows.filter(({ mm }) => mm === null), { x: 'day', y: 0, text: () => '?', dy: -7, fill: 'var(--care)' }),
            plot.ruleY([0], { stroke: 'var(--rule-strong)' }),
          ],
        })
      }}
    />
  )
}

function sumInWords({ days, sumMm, needMm, missing }: StationWeather['rain']['week']): string {
  return `${missing > 0 ? 'At least ' : ''}${inShort(sumMm)} mm in the last ${days} days against ${inShort(needMm)} mm${missing > 0 ? ` (${missing} ${missing === 1 ? 'day' : 'days'} without a measure)` : ''}`
}

function HeatPlate({ curve, district }: { readonly curve: HeatCurve, readonly district: string }) {
  const now = inShort(curve.sum)
  const here = curve.events.filter(({ least, most }) => curve.sum >= least && (most === null || curve.sum <= most)).map(({ name }) => name)
  return (
    <Plate
      title={`Degree days ${curve.how}`}
      says={`${curve.missing > 0 ? 'At least ' : ''}${now} °${curve.unit} days so far.${here.length > 0 ? ` About now: ${here.join(', ')}.` : ''}${curve.missing > 0 ? ` ${curve.missing} ${curve.missing === 1 ? 'day is' : 'days are'} missing.` : ''}`}
      of={curve} file={`degree-days-${district}`}
      table={{ heads: ['day', `degree days, °${curve.unit}`], rows: curve.points.map(({ day, sum }) => [day, Number(sum.toFixed(1))]) }}
      draw={(plot, width) => heatDrawn(plot, width, curve)}
    />
  )
}

function heatDrawn(plot: Plot, width: number, { points, events, sum }: HeatCurve): Element {
  const rows = points.map(({ day, sum: so }) => ({ day: new Date(day), sum: so }))
  const shown = events.filter(({ least }) => least <= sum * 1.6)
  const top = Math.max(sum, ...shown.map(({ least }) => least)) * 1.1 || 1
  return plot.plot({
    width, height: 220, marginLeft: 44, marginBottom: 34, marginRight: 6,
    x: { type: 'utc', label: null, ticks: width < 400 ? 4 : 8 }, y: { label: null, ticks: 4, domain: [0, top] },
    marks: [
      plot.ruleY(shown, { y: 'least', stroke: 'var(--rule-strong)', strokeDasharray: '2,3' }),
      plot.text(shown, { x: () => rows[0]?.day, y: 'least', text: 'name', dy: -6, textAnchor: 'start', fill: 'var(--ink-soft)' }),
      plot.lineY(rows, { x: 'day', y: 'sum', stroke: 'var(--bar)', strokeWidth: 2 }),
      plot.ruleY([0], { stroke: 'var(--rule-strong)' }),
    ],
  })
}

/** Days on which late blight, leaf blights of tomato and apple scab can have come. */
function Infection({ station: { lateBlight, tomato, scab } }: { readonly station: StationWeather }) {
  const days = (list: readonly string[], none: string) => list.length === 0 ? none : list.map(day => dayInWords(day)).join(', ')
  const infecting = scab.filter(({ infects }) => infects === true)
  const left = scab.filter(({ infects }) => infects === null).length
  return (
    <dl class="infection">
      <div>
        <dt>Late-blight weather <span class="hint">two days running, six weeks back (Hutton criteria)</span></dt>
        <dd>{days(lateBlight.hutton, 'none')}{lateBlight.open.length > 0 && `; left open by missing records: ${days(lateBlight.open, '')}`}</dd>
      </div>
      <div>
        <dt>The same by the older rule <span class="hint">11 humid hours a day (Smith 1956)</span></dt>
        <dd>{days(lateBlight.smith, 'none')}</dd>
      </div>
      <div>
        <dt>Leaf blights of tomato <span class="hint">severity values of two weeks (Madden and others 1978)</span></dt>
        <dd>{tomato.sum}{tomato.open.length > 0 && `, at least: ${tomato.open.length} ${tomato.open.length === 1 ? 'day is' : 'days are'} missing hours`}</dd>
      </div>
      <div>
        <dt>Apple scab <span class="hint">wet spells that infect, six weeks back (MacHardy and Gadoury 1989)</span></dt>
        <dd>{infecting.length === 0 ? 'none' : infecting.map(({ from, to, hours, meanC }) => `${dayInWords(from.slice(0, 10))}${to.slice(0, 10) === from.slice(0, 10) ? '' : ` to ${dayInWords(to.slice(0, 10))}`} (${inShort(hours)} hours wet${meanC === null ? '' : ` at ${inShort(meanC)} °C`})`).join('; ')}{left > 0 && `; ${left} left open by missing records`}</dd>
      </div>
    </dl>
  )
}
