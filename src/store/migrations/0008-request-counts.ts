import type { Kysely, Migration } from 'kysely'

/** How often one address asked for something within a minute, for processes that share a database. */
export const requestCounts: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.createTable('request_count')
      .addColumn('count_key', 'text', (column) => column.notNull())
      .addColumn('until', 'text', (column) => column.notNull())
      .addColumn('times', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('request_count_once', ['until', 'count_key'])
      .execute()
  },
  async down(db: Kysely<unknown>) {
    await db.schema.dropTable('request_count').execute()
  },
}
