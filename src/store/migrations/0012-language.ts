import type { Kysely, Migration } from 'kysely'

/** Keeps the language that an asker is spoken to in; every case before was in English. */
export const language: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.alterTable('case_file').addColumn('language', 'text', (column) => column.notNull().defaultTo('en')).execute()
  },
  async down(db: Kysely<unknown>) {
    await db.schema.alterTable('case_file').dropColumn('language').execute()
  },
}
