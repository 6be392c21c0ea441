import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** Letters that are to be sent. */
export function outbox({ rowNumber }: ColumnKinds): Migration {
  return {
    async up(db: Kysely<unknown>) {
      await db.schema.createTable('outbox')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('mail_key', 'text', (column) => column.notNull().unique())
        .addColumn('mail_order', 'text', (column) => column.notNull())
        .addColumn('ticket_id', 'integer', (column) => column.references('ticket.id'))
        .addColumn('sealed', 'text')
        .addColumn('state', 'text', (column) => column.notNull())
        .addColumn('tries', 'integer', (column) => column.notNull())
        .addColumn('made_at', 'text', (column) => column.notNull())
        .addColumn('trying_since', 'text', (column) => column.notNull())
        .addColumn('next_at', 'text', (column) => column.notNull())
        .addColumn('claim', 'text')
        .addColumn('ended_at', 'text')
        .addColumn('why', 'text')
        .execute()
      await db.schema.createIndex('outbox_by_turn').on('outbox').columns(['state', 'next_at']).execute()
    },
    async down(db: Kysely<unknown>) {
      await db.schema.dropTable('outbox').execute()
    },
  }
}
