import type { AdviceCard } from '../../../shared/index.js'

/** A time of year named in the advice, with the months it stands for. */
export interface NamedSeason {
  readonly season: Season
  readonly months: readonly number[]
}

export type Season = keyof typeof SEASONS

/** The seasons that an advice's steps name, in the order of the year: 'rake in autumn' is of no use without a month to a beginner. */
export function seasonsNamed(card: Pick<AdviceCard, 'doNow' | 'notWorthDoing' | 'nextYear' | 'spray' | 'bottomLine'>): readonly NamedSeason[] {
  const text = [card.bottomLine, ...card.doNow, ...card.notWorthDoing, ...card.nextYear, card.spray].join('\n')
  return (Object.keys(SEASONS) as Season[])
    .filter(season => new RegExp(`\\b(?:mid)?${season}\\b`, 'i').test(text))
    .map(season => ({ season, months: SEASONS[season] }))
}

/**
 * Months as runs, first and last of each: 4, 5, 9 is [[4, 5], [9, 9]]. A run may pass the end of the year.
 * All twelve, or none, is no run at all.
 */
export function monthRuns(months: readonly number[]): readonly (readonly [first: number, last: number])[] {
  const has = (month: number) => months.includes((month + 11) % 12 + 1)
  const firsts = ALL_MONTHS.filter(month => has(month) && !has(month - 1))
  return firsts.map(first => {
    let last = first
    while (has(last + 1)) last += 1
    return [first, (last - 1) % 12 + 1] as const
  })
}

const ALL_MONTHS = Array.from({ length: 12 }, (_, place) => place + 1)

/** Meteorological seasons of the northern half of the world: whole months, three each (World Meteorological Organization practice; from memory). */
const SEASONS = { spring: [3, 4, 5], summer: [6, 7, 8], autumn: [9, 10, 11], winter: [12, 1, 2] } as const
