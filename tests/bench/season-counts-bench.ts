import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { replayCase } from '../../src/desk/casebook/replay.js'
import { plausibleHere } from '../../src/desk/season/plausible-here.js'
import { showSeason, weekCounts } from '../../src/desk/season/season-desk.js'
import { seededRandom } from '../../src/engine/index.js'
import { type Guide, loadGuide } from '../../src/guide/index.js'
import { buildMatchIndex } from '../../src/match/index.js'
import { isoWeekOf, plausibilities, type SeasonHere } from '../../src/season/index.js'
import { openStore, type Store } from '../../src/store/index.js'

const CASES = 20_000
const DAYS = 730
const NOW = new Date('2026-07-15T12:00:00.000Z')
const DAY_MS = 86_400_000

/** Speed of the season's pages over two years and 20,000 cases, and what an invented season does to the casebook. */
export async function seasonCountsBench(json: boolean): Promise<void> {
  const loaded = await loadGuide('trees', NOW.toISOString().slice(0, 10))
  if (loaded.guide === null) throw new Error('The guide has errors. See: npx frondline proof')
  const result = { pages: await pages(loaded.guide), moved: movedCases(loaded.guide) }
  if (json) process.stdout.write(`${JSON.stringify(result)}\n`)
  else print(result)
}

interface PageTime { readonly page: string; readonly medianMs: number; readonly slowestMs: number; readonly cpuMs: number; readonly rows: number }

async function pages(guide: Guide): Promise<PageTime[]> {
  const home = await mkdtemp(join(tmpdir(), 'frondline-season-bench-'))
  const store = await openStore({ home, databaseUrl: null })
  try {
    await fill(store, guide)
    const room = { db: store.db, knowledge: () => ({ guide, index: buildMatchIndex(guide) }), now: () => NOW }
    const index = room.knowledge().index
    const ready = { ...room, knowledge: () => ({ guide, index }) }
    return [
      await timed('season of the region', async () => (await showSeason(ready, {})).problems.length),
      await timed('season of a district', async () => (await showSeason(ready, { district: 'holt-fen' })).problems.length),
      await timed('weekly counts, two years', async () => (await weekCounts(ready, {})).counts.length),
      await timed('what moves in a district, as for each case opened', async () => (await plausibleHere(ready, guide, 'holt-fen', '2026-07-15')).length),
    ]
  } finally {
    await store.close()
    await rm(home, { recursive: true, force: true })
  }
}

async function timed(page: string, work: () => Promise<number>): Promise<PageTime> {
  const times: number[] = []
  const cpu: number[] = []
  let rows = 0
  for (let turn = 0; turn < 9; turn++) {
    const [from, used] = [performance.now(), process.cpuUsage()]
    rows = await work()
    times.push(performance.now() - from)
    const { user, system } = process.cpuUsage(used)
    cpu.push((user + system) / 1000)
  }
  times.sort((a, b) => a - b)
  cpu.sort((a, b) => a - b)
  return { page, medianMs: times[4] ?? 0, slowestMs: times.at(-1) ?? 0, cpuMs: cpu[4] ?? 0, rows }
}

/** Cases spread over hosts, problems by how common they are, districts and days; each with its report. */
async function fill({ db }: Store, guide: Guide): Promise<void> {
  const random = seededRandom(11)
  const districts = [...guide.region.districts.keys()]
  const hosts = guide.hosts.filter(({ problems }) => problems.length > 0)
  for (let first = 0; first < CASES; first += 100) {
    await db.transaction().execute(async (trx) => {
      for (let id = first + 1; id <= first + 100; id++) {
        const askedOn = new Date(NOW.getTime() - Math.floor(random() * DAYS) * DAY_MS).toISOString().slice(0, 10)
        const host = hosts[Math.floor(random() * hosts.length)]
        if (host === undefined) throw new Error('The guide has no host with problems.')
        const district = districts[Math.floor(random() * districts.length)] ?? null
        let left = random()
        const row = host.commonness.findIndex((share) => (left -= share) <= 0)
        const problem = guide.problems[host.problems[Math.max(0, row)] ?? -1]?.id ?? ''
        await trx.insertInto('case_file').values({
          link: `case-${id}`, revision: 0, evidence: '{}', words: '[]', asked_on: askedOn, district, matched: '{}', opened_at: askedOn,
          call_of: null, call_closed_at: null, guide_hash: guide.hash, opening_key_hash: null, practice: null,
        }).execute()
        const isSettled = random() < 0.2
        await trx.insertInto('season_report').values({
          case_id: id, problem, host: host.id, district, asked_on: askedOn, week: isoWeekOf(askedOn), basis: isSettled ? 'settled' : 'concluded',
          weight: isSettled ? 1 : 0.75 + 0.25 * random(), asker: id, is_repeat: random() < 0.05 ? 1 : 0,
        }).execute()
      }
    })
  }
}

interface MovedCase { readonly case: string; readonly expected: string; readonly plain: string; readonly withSeason: string; readonly change: 'now right' | 'now wrong' | 'neither right' | 'both right' }
interface Moved { readonly cases: number; readonly right: number; readonly rightWithSeason: number; readonly asked: number; readonly askedWithSeason: number; readonly moved: readonly MovedCase[] }

/**
 * Every worked case played twice: plainly, and in an invented season in which no watch problem has been found but one in four,
 * which are widespread, and five reports came in of every ninth problem. Whether a case's truth is among what is raised is
 * left to chance, as in life; so a good season must not cost many cases.
 */
function movedCases(guide: Guide): Moved {
  const index = buildMatchIndex(guide)
  const watched = guide.problems.filter(({ watch }) => watch !== null)
  const here: SeasonHere = {
    district: 'holt-fen', on: '2026-07-15', weather: null,
    presence: watched.map(({ id }, place) => ({ problem: id, district: 'holt-fen', state: place % 4 === 0 ? 'widespread' : 'not found', on: '2026-05-01', by: 'invented', why: 'invented' })),
    recent: guide.problems.filter((_, place) => place % 9 === 0).flatMap((problem) => {
      const host = guide.hosts.find(({ problems }) => problems.includes(problem.number))
      return host === undefined ? [] : [{ problem: problem.id, host: host.id, week: '2026-W29', reports: 5, cases: 5 }]
    }),
  }
  const plausible = Object.fromEntries(plausibilities(guide, here).map(({ problem, factor }) => [problem, factor]))
  const moved: MovedCase[] = []
  const sums = { right: 0, rightWithSeason: 0, asked: 0, askedWithSeason: 0 }
  for (const worked of guide.casebook) {
    const [plain, season] = [replayCase(guide, index, worked), replayCase(guide, index, worked, plausible)]
    sums.right += plain.ok ? 1 : 0
    sums.rightWithSeason += season.ok ? 1 : 0
    sums.asked += plain.asked.length
    sums.askedWithSeason += season.asked.length
    if (plain.concluded === season.concluded) continue
    const change = season.ok ? (plain.ok ? 'both right' : 'now right') : (plain.ok ? 'now wrong' : 'neither right')
    moved.push({ case: worked.id, expected: plain.expected, plain: plain.concluded, withSeason: season.concluded, change })
  }
  return { cases: guide.casebook.length, ...sums, moved }
}

function print({ pages, moved: { cases, right, rightWithSeason, asked, askedWithSeason, moved } }: { readonly pages: readonly PageTime[]; readonly moved: Moved }): void {
  const out = (line: string): void => { process.stdout.write(`${line}\n`) }
  out(`Two years, ${CASES} cases, SQLite:`)
  for (const { page, medianMs, slowestMs, cpuMs, rows } of pages) out(`  ${page.padEnd(52)} ${medianMs.toFixed(1).padStart(7)} ms median, ${slowestMs.toFixed(1)} slowest, ${cpuMs.toFixed(1)} ms of one core, ${rows} rows`)
  out(`The casebook, ${cases} cases: ${right} right plainly, ${rightWithSeason} in the invented season; ${asked} and ${askedWithSeason} checks asked. Moved:`)
  for (const one of moved) out(`  ${one.change.padEnd(13)} ${one.case}: ${one.plain} → ${one.withSeason} (true: ${one.expected})`)
}
