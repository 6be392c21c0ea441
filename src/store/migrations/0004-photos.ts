import type { Kysely, Migration } from 'kysely'

/** Photos of a case, and the uploads that brought them. */
export const photos: Migration = {
  async up(db: Kysely<unknown>) {
    await db.schema.createTable('photo')
      .addColumn('case_id', 'integer', (column) => column.notNull().references('case_file.id'))
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('large_hash', 'text', (column) => column.notNull())
      .addColumn('small_hash', 'text', (column) => column.notNull())
      .addColumn('width', 'integer', (column) => column.notNull())
      .addColumn('height', 'integer', (column) => column.notNull())
      .addColumn('bytes', 'integer', (column) => column.notNull())
      .addColumn('person_id', 'integer', (column) => column.references('person.id'))
      .addColumn('at', 'text', (column) => column.notNull())
      .addColumn('removed_at', 'text')
      .addPrimaryKeyConstraint('photo_by_number', ['case_id', 'number'])
      .execute()
    await db.schema.createIndex('photo_by_large_hash').on('photo').column('large_hash').execute()
    await db.schema.createIndex('photo_by_small_hash').on('photo').column('small_hash').execute()

    await db.schema.createTable('photo_upload')
      .addColumn('case_id', 'integer', (column) => column.notNull().references('case_file.id'))
      .addColumn('upload_key', 'text', (column) => column.notNull())
      .addColumn('number', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('photo_upload_once', ['case_id', 'upload_key'])
      .execute()
  },
  async down(db: Kysely<unknown>) {
    await db.schema.dropTable('photo_upload').execute()
    await db.schema.dropTable('photo').execute()
  },
}
