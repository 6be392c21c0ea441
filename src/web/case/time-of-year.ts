import type { AdviceCard } from '../../../shared/index.js'
import type { Season } from '../wording/en-sheet.js'

/** A time of year named in the advice, with the months it stands for. */
export interface NamedSeason {
  readonly season: Season
  readonly months: readonly number[]
}

/**
 * The seasons in which an advice's steps are done, in the order of the year: 'rake in autumn' is of no use without a
 * month to a beginner. Only steps are read, and only where the season says when: 'summer squash', 'water from a spring'
 * and 'the mites spend the winter there' are no time to do anything.
 */
export function seasonsNamed(card: Pick<AdviceCard, 'doNow' | 'nextYear' | 'spray'>): readonly NamedSeason[] {
  const steps = [...card.doNow, ...card.nextYear, card.spray]
  const named = new Set<string>(steps.flatMap(step => [...seasonsIn(step, WHEN, SEASON), ...seasonsIn(step, SPANISH_WHEN, SPANISH_SEASON).flatMap(season => FROM_SPANISH[season] ?? [])]))
  return (Object.keys(SEASONS) as Season[]).filter(season => named.has(season)).map(season => ({ season, months: SEASONS[season] }))
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

/** The seasons that stand in what says a time. */
function seasonsIn(step: string, when: RegExp, season: RegExp): readonly string[] {
  return [...step.matchAll(when)].flatMap(([said]) => [...said.toLowerCase().matchAll(season)].map(([, name = '']) => name))
}

const ALL_MONTHS = Array.from({ length: 12 }, (_, place) => place + 1)

/** Meteorological seasons of the northern half of the world: whole months, three each (World Meteorological Organization practice; from memory). */
const SEASONS = { spring: [3, 4, 5], summer: [6, 7, 8], autumn: [9, 10, 11], winter: [12, 1, 2] } as const

const ANY_SEASON = '(?:mid)?(?:spring|summer|autumn|winter)'
const SEASON = /(spring|summer|autumn|winter)/g

/** The same of advice in Spanish: 'en otoño', 'desde la primavera hasta el otoño', 'a finales de verano'. */
const SPANISH_ANY_SEASON = '(?:primavera|verano|otoño|invierno)'
const SPANISH_SEASON = /(primavera|verano|otoño|invierno)/g
const SPANISH_WHEN = new RegExp(
  String.raw`(?<!\p{L})(?:en|desde|hasta|durante|antes|después|cada|todos|todas|finales|final|principios|mediados|próxim[ao]|este|esta)[\s,]+`
  + String.raw`(?:(?:el|la|los|las|del|de|al|a|en|y|o|u|hasta|desde|pleno|plena|finales|final|principios|mediados|próxim[ao]|este|esta|cada|${SPANISH_ANY_SEASON})[\s,]+)*`
  + String.raw`${SPANISH_ANY_SEASON}(?!\p{L})`,
  'giu',
)
const FROM_SPANISH: Readonly<Record<string, Season>> = { primavera: 'spring', verano: 'summer', otoño: 'autumn', invierno: 'winter' }

/** A word of time, then one season or several. A season that only describes something ('in winter squash') says no time. */
const WHEN = new RegExp(
  String.raw`\b(?:in|by|from|until|till|before|after|during|each|every|all|next|this|late|early)[\s,]+`
  + String.raw`(?:(?:the|early|late|next|this|each|every|and|or|to|until|in|by|${ANY_SEASON})[\s,]+)*`
  + String.raw`${ANY_SEASON}\b(?!['’-])(?!\s+(?:squash|moths?|chafers?|flowers?|bulbs?|onions?|cabbages?|rows?|oils?|nights?|cold|sun)\b)`,
  'gi',
)
