import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** Invitations, one-time codes with their recovery codes, and what administrators decide. */
export function peopleTables(kinds: ColumnKinds): Migration {
  return { up: (db: Kysely<unknown>) => makeAll(db, kinds), down: dropAll }
}

async function makeAll(db: Kysely<unknown>, { rowNumber }: ColumnKinds): Promise<void> {
  await db.schema.createTable('invitation')
    .addColumn('token_hash', 'text', (column) => column.primaryKey().notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('made_by', 'integer', (column) => column.notNull().references('person.id'))
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addColumn('expires_at', 'text', (column) => column.notNull())
    // Used, withdrawn or run out: a spent invitation stays, so that nobody can be invited twice by one link.
    .addColumn('spent_at', 'text')
    .execute()
  await db.schema.createIndex('invitation_by_name').on('invitation').column('name').execute()

  await db.schema.createTable('code_secret')
    .addColumn('person_id', 'integer', (column) => column.primaryKey().notNull().references('person.id'))
    .addColumn('sealed', 'text', (column) => column.notNull())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addColumn('confirmed_at', 'text')
    .addColumn('last_step', 'integer', (column) => column.notNull())
    .execute()

  await db.schema.createTable('recovery_code')
    .addColumn('code_hash', 'text', (column) => column.primaryKey().notNull())
    .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
    .addColumn('used_at', 'text')
    .execute()
  await db.schema.createIndex('recovery_code_by_person').on('recovery_code').column('person_id').execute()

  await db.schema.createTable('helpline_setting')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
    .addColumn('content', 'text', (column) => column.notNull())
    .execute()

  // Who changed whose account, when: append-only.
  await db.schema.createTable('person_change')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
    .addColumn('by_id', 'integer', (column) => column.references('person.id'))
    .addColumn('what', 'text', (column) => column.notNull())
    .execute()
}

async function dropAll(db: Kysely<unknown>): Promise<void> {
  for (const table of ['person_change', 'helpline_setting', 'recovery_code', 'code_secret', 'invitation']) {
    await db.schema.dropTable(table).execute()
  }
}
