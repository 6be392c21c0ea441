import { type Selectable, sql } from 'kysely'
import type { Db } from './store.js'
import type { SeasonReportTable } from './tables.js'

export type SeasonReportRow = Selectable<SeasonReportTable>

/** What the season counts of a case, or undefined when nothing. */
export function seasonReportOf(db: Db, caseId: number): Promise<SeasonReportRow | undefined> {
  return db.selectFrom('season_report').selectAll().where('case_id', '=', caseId).executeTakeFirst()
}

/** Keeps what the season counts of a case, in place of what it counted before. */
export async function keepSeasonReport(db: Db, row: SeasonReportRow): Promise<void> {
  const { case_id: _, ...rest } = row
  await db.insertInto('season_report').values(row).onConflict((conflict) => conflict.column('case_id').doUpdateSet(rest)).execute()
}

/** Lets a case count for nothing. */
export async function dropSeasonReport(db: Db, caseId: number): Promise<void> {
  await db.deleteFrom('season_report').where('case_id', '=', caseId).execute()
}

/** The reports of one asker on one problem. */
export function reportsOfAsker(db: Db, asker: number, problem: string): Promise<SeasonReportRow[]> {
  return db.selectFrom('season_report').selectAll().where('asker', '=', asker).where('problem', '=', problem).execute()
}

/** Marks whether a report only repeats another. */
export async function markRepeat(db: Db, caseId: number, isRepeat: boolean): Promise<void> {
  await db.updateTable('season_report').set({ is_repeat: isRepeat ? 1 : 0 }).where('case_id', '=', caseId).execute()
}

/**
 * Cuts the tie between the reports of one asker: each counts or repeats as it did, and nothing says any more that they
 * came from one person.
 */
export async function forgetAskerOfReports(db: Db, caseId: number): Promise<void> {
  const asker = (await seasonReportOf(db, caseId))?.asker ?? null
  if (asker !== null) await db.updateTable('season_report').set({ asker: null }).where('asker', '=', asker).execute()
}

/** The number that stands for the asker of these cases so far: the lowest, null when none of them is counted. */
export async function askerOfCases(db: Db, caseIds: readonly number[]): Promise<number | null> {
  if (caseIds.length === 0) return null
  const rows = await db.selectFrom('season_report').select('asker').where('case_id', 'in', caseIds).where('asker', 'is not', null).execute()
  return rows.reduce<number | null>((least, { asker }) => (least === null || (asker !== null && asker < least) ? asker : least), null)
}

/** The cases of these tickets. */
export async function casesOfTickets(db: Db, ticketIds: readonly number[]): Promise<number[]> {
  if (ticketIds.length === 0) return []
  return (await db.selectFrom('ticket').select('case_id').where('id', 'in', ticketIds).execute()).map(({ case_id: id }) => id)
}

/** Which reports to count. What is left out fits everything. */
export interface CountQuery {
  /** First and last week, both included. */
  readonly from: string
  readonly until: string
  readonly problem?: string | undefined
  readonly host?: string | undefined
  readonly district?: string | undefined
}

/** Reports of one problem on one host in one district in one week. */
export interface CountRow {
  readonly problem: string
  readonly host: string
  readonly district: string | null
  readonly week: string
  readonly reports: number
  readonly cases: number
  readonly settled: number
}

/**
 * Counts reports by problem, host, district and week; repeats do not count. What was made up for the demonstration counts
 * with the rest.
 */
export async function countReports(db: Db, { from, until, problem, host, district }: CountQuery): Promise<CountRow[]> {
  const counted = db.selectFrom('season_report').where('is_repeat', '=', 0)
    .select(['problem', 'host', 'district', 'week', 'weight as reports', sql<number>`1`.as('cases'), sql<number>`case when basis = 'settled' then 1 else 0 end`.as('settled')])
    .unionAll(db.selectFrom('invented_count')
      .select(['problem', 'host', sql<string | null>`district`.as('district'), 'week', 'reports', 'cases', 'settled']))
  let found = db.selectFrom(counted.as('counted'))
    .select((is) => [
      'problem', 'host', 'district', 'week', is.fn.sum<number>('reports').as('reports'), is.fn.sum<number>('cases').as('cases'),
      is.fn.sum<number>('settled').as('settled'),
    ])
    .where('week', '>=', from).where('week', '<=', until)
  if (problem !== undefined) found = found.where('problem', '=', problem)
  if (host !== undefined) found = found.where('host', '=', host)
  if (district !== undefined) found = found.where('district', '=', district)
  const rows = await found.groupBy(['problem', 'host', 'district', 'week']).orderBy('problem').orderBy('week').orderBy('host').execute()
  return rows.map((row) => ({ ...row, reports: Number(row.reports), cases: Number(row.cases), settled: Number(row.settled) }))
}

/** The first week of which anything is counted, or null. */
export async function firstCountedWeek(db: Db): Promise<string | null> {
  const first = await db.selectFrom('season_report').select('week').orderBy('week').limit(1).executeTakeFirst()
  const invented = await db.selectFrom('invented_count').select('week').orderBy('week').limit(1).executeTakeFirst()
  return [first, invented].flatMap((row) => (row === undefined ? [] : [row.week])).sort()[0] ?? null
}

/** Case numbers above one, in order, at most so many. */
export async function caseIdsAfter(db: Db, after: number, most: number): Promise<number[]> {
  return (await db.selectFrom('case_file').select('id').where('id', '>', after).orderBy('id').limit(most).execute()).map(({ id }) => id)
}
