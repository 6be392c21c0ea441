import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/**
 * What the season counts of each case, what was said of watch problems, the notices of first reports, and with each case
 * what the season made of it when it was opened. What a case concludes is reckoned and stands in no column, so that
 * counts cannot be a query over cases: they are kept, one row a case, with every change of the case or its ticket.
 */
export function season({ rowNumber }: ColumnKinds): Migration {
  return {
    async up(db: Kysely<unknown>) {
      await db.schema.alterTable('case_file').addColumn('plausible', 'text').execute()

      await db.schema.createTable('season_report')
        .addColumn('case_id', 'integer', (column) => column.primaryKey().notNull().references('case_file.id'))
        .addColumn('problem', 'text', (column) => column.notNull())
        .addColumn('host', 'text', (column) => column.notNull())
        .addColumn('district', 'text')
        .addColumn('asked_on', 'text', (column) => column.notNull())
        .addColumn('week', 'text', (column) => column.notNull())
        .addColumn('basis', 'text', (column) => column.notNull())
        .addColumn('weight', 'double precision', (column) => column.notNull())
        .addColumn('asker', 'integer')
        .addColumn('is_repeat', 'integer', (column) => column.notNull())
        .execute()
      await db.schema.createIndex('season_report_by_week').on('season_report').columns(['week', 'district']).execute()
      await db.schema.createIndex('season_report_by_problem').on('season_report').columns(['problem', 'week']).execute()
      await db.schema.createIndex('season_report_by_asker').on('season_report').column('asker').execute()

      await db.schema.createTable('presence_change')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('problem', 'text', (column) => column.notNull())
        .addColumn('district', 'text', (column) => column.notNull())
        .addColumn('state', 'text', (column) => column.notNull())
        .addColumn('holds_from', 'text', (column) => column.notNull())
        .addColumn('why', 'text', (column) => column.notNull())
        .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
        .addColumn('at', 'text', (column) => column.notNull())
        .execute()
      await db.schema.createIndex('presence_change_by_problem').on('presence_change').columns(['problem', 'district']).execute()

      await db.schema.createTable('watch_notice')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('problem', 'text', (column) => column.notNull())
        // Empty where the asker named none, so that the notice is one all the same.
        .addColumn('district', 'text', (column) => column.notNull())
        .addColumn('year', 'integer', (column) => column.notNull())
        .addColumn('case_id', 'integer', (column) => column.notNull().references('case_file.id'))
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('seen_by', 'integer', (column) => column.references('person.id'))
        .addColumn('seen_at', 'text')
        .addUniqueConstraint('watch_notice_once', ['problem', 'district', 'year', 'case_id'])
        .execute()
    },
    async down(db: Kysely<unknown>) {
      for (const table of ['watch_notice', 'presence_change', 'season_report']) await db.schema.dropTable(table).execute()
      await db.schema.alterTable('case_file').dropColumn('plausible').execute()
    },
  }
}
