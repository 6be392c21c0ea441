import type { Kysely, Migration } from 'kysely'

/** Lets a repeated opening find the case that the first one made. */
export function openingKey(): Migration {
  return {
    async up(db: Kysely<unknown>) {
      await db.schema.alterTable('case_file').addColumn('opening_key_hash', 'text').execute()
      // Rows without a key do not meet one another: a unique index takes any number of nulls.
      await db.schema.createIndex('case_file_by_opening_key').on('case_file').column('opening_key_hash').unique().execute()
    },
    async down(db: Kysely<unknown>) {
      await db.schema.dropIndex('case_file_by_opening_key').execute()
      await db.schema.alterTable('case_file').dropColumn('opening_key_hash').execute()
    },
  }
}
