import { Belief, checkModel, type Evidence, type Model, readCase, seededRandom } from '../../src/engine/index.js'
import { loadGuide } from '../../src/guide/index.js'

interface Row {
  readonly problems: number
  readonly checks: number
  readonly stepsASecond: number
  readonly medianMicros: number
  readonly p99Micros: number
  /** Nanoseconds a live problem and open check: flat when cost grows as their product. */
  readonly nanosAPair: number
}

/** How much longer a step takes when there is more to weigh. */
interface Growth {
  readonly from: string
  readonly to: string
  /** Times as many live problems × open checks. */
  readonly pairs: number
  /** Times as long a step (median). At most `pairs` when cost grows no faster than their product. */
  readonly time: number
}

/** Sizes of the made-up hosts: problems × checks. */
const sizes = [[10, 40], [20, 40], [100, 40], [100, 160], [1000, 40]] as const

/** Steps a second of the reckoning for hosts of 10, 100 and 1,000 problems, and of whole readings of the shipped guide. */
export async function engineBench(json: boolean): Promise<void> {
  const rows = sizes.map(([problems, checks]) => measure(problems, checks))
  const growth = growthOf(rows)
  const whole = await measureGuide()
  if (json) {
    process.stdout.write(`${JSON.stringify({ reckoning: rows, growth, wholeReading: whole }, null, 2)}\n`)
    return
  }
  for (const row of rows) {
    process.stdout.write(`${String(row.problems).padStart(5)} problems × ${row.checks} checks: ${Math.round(row.stepsASecond)} steps a second, median ${row.medianMicros.toFixed(1)} µs, p99 ${row.p99Micros.toFixed(1)} µs, ${row.nanosAPair.toFixed(2)} ns a problem and check\n`)
  }
  for (const { from, to, pairs, time } of growth) {
    process.stdout.write(`${from} to ${to}: ${pairs.toFixed(1)} times the problems × checks, ${time.toFixed(1)} times the time\n`)
  }
  for (const { host, problems, medianMicros, p99Micros } of whole) {
    process.stdout.write(`whole reading of ${host} (${problems} problems): median ${medianMicros.toFixed(1)} µs, p99 ${p99Micros.toFixed(1)} µs\n`)
  }
}

/** Each host against the one before it and the smallest against the largest. */
function growthOf(rows: readonly Row[]): Growth[] {
  const name = ({ problems, checks }: Row): string => `${problems} × ${checks}`
  const between = (a: Row, b: Row): Growth => ({
    from: name(a), to: name(b), pairs: b.problems * b.checks / (a.problems * a.checks), time: b.medianMicros / a.medianMicros,
  })
  return rows.flatMap((row, place) => {
    const first = rows[0]
    const before = rows[place - 1]
    if (first === undefined || before === undefined) return []
    return place === rows.length - 1 ? [between(before, row), between(first, row)] : [between(before, row)]
  })
}

/** One step of the reckoning: take in the answers so far, then weigh every open check. */
function measure(problems: number, checks: number): Row {
  const random = seededRandom(problems)
  const weights = new Float64Array(problems).fill(1)
  const model: Model = {
    problems, rows: problems, problemOfRow: Int32Array.from({ length: problems }, (_, row) => row), logRowShare: new Float64Array(problems), groups: 0,
    checks: Array.from({ length: checks }, () => {
      const table = new Float64Array(problems * 5)
      for (let row = 0; row < problems; row++) {
        const parts = Array.from({ length: 5 }, () => 0.05 + random() ** 3)
        const sum = parts.reduce((a, b) => a + b, 0)
        parts.forEach((part, answer) => { table[row * 5 + answer] = Math.log(part / sum) })
      }
      return checkModel(table, weights, 1)
    }),
  }
  const belief = new Belief(model)
  const priors = new Float64Array(problems).fill(-Math.log(problems))
  let kept = 0
  const step = (turn: number): void => {
    belief.start(priors)
    belief.see(turn % checks, turn % 5)
    let best = 0
    for (let check = 0; check < checks; check++) best = Math.max(best, belief.gainBits(check))
    kept += best
  }
  const micros = timed(step, Math.max(200, Math.round(2e6 / (problems * checks))))
  if (Number.isNaN(kept)) throw new Error('The reckoning gave no number.')
  const median = micros[Math.floor(micros.length / 2)] ?? 0
  return {
    problems, checks, medianMicros: median, p99Micros: micros[Math.floor(micros.length * 0.99)] ?? 0,
    stepsASecond: 1e6 * micros.length / micros.reduce((a, b) => a + b, 0), nanosAPair: 1000 * median / (problems * checks),
  }
}

async function measureGuide() {
  const { guide } = await loadGuide('trees', '2026-11-25')
  if (guide === null) throw new Error('The shipped guide does not compile. Run frondline proof.')
  return guide.hosts.map((host) => {
    const answered = Array.from(host.checks).slice(0, 3).flatMap((number) => {
      const check = guide.checks[number]
      const label = check?.answers[0]?.label
      return check === undefined || label === undefined ? [] : [{ check: check.id, answer: label, from: 'asked' as const }]
    })
    const evidence: Evidence = { redFlags: [], carriedOn: false, start: { host: host.id, node: null }, findings: answered }
    const micros = timed(() => { readCase(guide, evidence, { on: '2026-06-15', district: null }) }, 3000)
    return {
      host: host.id, problems: host.problems.length, medianMicros: micros[Math.floor(micros.length / 2)] ?? 0,
      p99Micros: micros[Math.floor(micros.length * 0.99)] ?? 0,
    }
  })
}

/** Sorted times of many runs in microseconds, after a warm-up. */
function timed(run: (turn: number) => void, times: number): Float64Array {
  for (let turn = 0; turn < Math.min(2000, times); turn++) run(turn)
  const micros = new Float64Array(times)
  for (let turn = 0; turn < times; turn++) {
    const before = performance.now()
    run(turn)
    micros[turn] = (performance.now() - before) * 1000
  }
  return micros.sort()
}
