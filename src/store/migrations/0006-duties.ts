import type { Kysely, Migration } from 'kysely'

/** Work that only one process at a time may do, and when it was last done. */
export const duties: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.createTable('duty')
      .addColumn('name', 'text', (column) => column.primaryKey().notNull())
      .addColumn('begun_at', 'text')
      .addColumn('holder', 'text')
      .addColumn('held_until', 'text')
      .execute()
  },
  async down(db: Kysely<unknown>) {
    await db.schema.dropTable('duty').execute()
  },
}
