import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** What specialists approved for everyone to read of a week, and took back. */
export function weeklyNote({ rowNumber }: ColumnKinds): Migration {
  return {
    async up(db: Kysely<unknown>) {
      await db.schema.createTable('weekly_note')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('week', 'text', (column) => column.notNull())
        .addColumn('what', 'text', (column) => column.notNull())
        .addColumn('note', 'text')
        .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
        .addColumn('at', 'text', (column) => column.notNull())
        .addColumn('invented', 'integer', (column) => column.notNull().defaultTo(0))
        .execute()
      await db.schema.createIndex('weekly_note_by_week').on('weekly_note').columns(['week', 'id']).execute()
    },
    async down(db: Kysely<unknown>) {
      await db.schema.dropTable('weekly_note').execute()
    },
  }
}
