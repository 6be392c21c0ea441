import type { Kysely, Migration } from 'kysely'

/** Reports that were made up for the demonstration, and marks on what else was: so that all of it can be taken away again. */
export const inventedSeason: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.createTable('invented_count')
      .addColumn('problem', 'text', (column) => column.notNull())
      .addColumn('host', 'text', (column) => column.notNull())
      .addColumn('district', 'text', (column) => column.notNull())
      .addColumn('week', 'text', (column) => column.notNull())
      .addColumn('reports', 'double precision', (column) => column.notNull())
      .addColumn('cases', 'integer', (column) => column.notNull())
      .addColumn('settled', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('invented_count_once', ['problem', 'host', 'district', 'week'])
      .execute()
    await db.schema.createIndex('invented_count_by_week').on('invented_count').columns(['week', 'district']).execute()
    for (const table of ['presence_change', 'weather_station']) {
      await db.schema.alterTable(table).addColumn('invented', 'integer', (column) => column.notNull().defaultTo(0)).execute()
    }
  },
  async down(db: Kysely<unknown>) {
    await db.schema.dropTable('invented_count').execute()
    for (const table of ['presence_change', 'weather_station']) await db.schema.alterTable(table).dropColumn('invented').execute()
  },
}
