import type { Kysely, Migration } from 'kysely'

/** Marks calls that are only practised. */
export const practice: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.alterTable('case_file').addColumn('practice', 'text').execute()
  },
  async down(db: Kysely<unknown>) {
    await db.schema.alterTable('case_file').dropColumn('practice').execute()
  },
}
