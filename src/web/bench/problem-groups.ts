import type { LikelyLine, ProblemRows } from '../../../shared/index.js'

export type ProblemRow = ProblemRows['problems'][number]

export interface ProblemGroup {
  readonly title: string
  readonly rows: readonly ProblemRow[]
}

export interface GroupedProblems {
  readonly groups: readonly ProblemGroup[]
  /** How many more there are; typing finds them. */
  readonly hidden: number
}

interface Setting {
  /** Plants to put first: the ticket's own, or the guesses when it has none. */
  readonly plants: readonly string[]
  readonly differential: readonly LikelyLine[]
  readonly typed: string
}

/**
 * The problems to choose from, by plant: first the likely ones, then those of the ticket's plant, then, once something
 * is typed, those of other plants. A problem stands in one group only; one of several plants stands under the first
 * of them that leads the list.
 */
export function groupProblems(problems: readonly ProblemRow[], { plants, differential, typed }: Setting): GroupedProblems {
  const wanted = fold(typed).split(' ').filter(word => word !== '')
  const holds = (text: string) => wanted.every(word => fold(text).includes(word))
  const byName = problems.filter(row => holds(`${row.name} ${row.plants.map(plant => plant.name).join(' ')}`))
  // What a problem does is looked at only where no name helps: it is full of common words.
  const fitting = byName.length > 0 ? byName : problems.filter(row => holds(row.what))

  const left = new Map(fitting.map(row => [row.problem, row]))
  const take = (rows: readonly ProblemRow[]) => { for (const row of rows) left.delete(row.problem); return rows }
  const groups: ProblemGroup[] = []
  const add = (title: string, rows: readonly ProblemRow[]) => { if (rows.length > 0) groups.push({ title, rows: take(rows) }) }

  add('Likely here', differential
    .filter(line => line.probability >= LIKELY_FROM).slice(0, MOST_LIKELY)
    .flatMap(line => (line.problem === null ? [] : left.get(line.problem) ?? [])))
  for (const plant of plants) {
    const ofPlant = [...left.values()].filter(row => row.plants.some(other => other.host === plant))
    add(ofPlant[0]?.plants.find(other => other.host === plant)?.name ?? plant, ofPlant)
  }
  if (wanted.length === 0) return { groups, hidden: left.size }

  const shown = take([...left.values()].slice(0, MOST_OF_OTHERS))
  for (const title of new Set(shown.map(plantTitle))) groups.push({ title, rows: shown.filter(row => plantTitle(row) === title) })
  return { groups, hidden: left.size }
}

function plantTitle({ plants }: ProblemRow): string {
  return plants.length === 1 ? plants[0]?.name ?? '' : plants.length === 0 ? 'No one plant' : 'Several plants'
}

function fold(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
}

/** Below this a cause is not worth a place at the top. */
const LIKELY_FROM = 0.03
const MOST_LIKELY = 5
/** More of other plants than this is slower to read than another letter is to type. */
const MOST_OF_OTHERS = 12
