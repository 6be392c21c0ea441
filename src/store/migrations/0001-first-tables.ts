import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** Cases, tickets and people. */
export function firstTables(kinds: ColumnKinds): Migration {
  // A migration meets tables in a form that the types of today no longer describe.
  return { up: (db: Kysely<unknown>) => makeAll(db, kinds), down: dropAll }
}

async function makeAll(db: Kysely<unknown>, kinds: ColumnKinds): Promise<void> {
  const { rowNumber } = kinds

  await db.schema.createTable('person')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('name', 'text', (column) => column.notNull().unique())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('password_hash', 'text', (column) => column.notNull())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addColumn('removed_at', 'text')
    .execute()

  await db.schema.createTable('session')
    .addColumn('token_hash', 'text', (column) => column.primaryKey().notNull())
    .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addColumn('expires_at', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('session_by_expiry').on('session').column('expires_at').execute()

  await db.schema.createTable('sign_in_attempt')
    .addColumn('attempt_key', 'text', (column) => column.primaryKey().notNull())
    .addColumn('failures', 'integer', (column) => column.notNull())
    .addColumn('last_at', 'text', (column) => column.notNull())
    .addColumn('blocked_until', 'text')
    .execute()

  await db.schema.createTable('case_file')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('link', 'text', (column) => column.notNull().unique())
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('evidence', 'text', (column) => column.notNull())
    .addColumn('words', 'text', (column) => column.notNull())
    .addColumn('asked_on', 'text', (column) => column.notNull())
    .addColumn('district', 'text')
    .addColumn('matched', 'text', (column) => column.notNull())
    .addColumn('opened_at', 'text', (column) => column.notNull())
    .addColumn('call_of', 'integer', (column) => column.references('person.id'))
    .addColumn('call_closed_at', 'text')
    .addColumn('guide_hash', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('case_file_by_call').on('case_file').columns(['call_of', 'call_closed_at']).execute()

  await db.schema.createTable('case_change')
    .addColumn('case_id', 'integer', (column) => column.notNull().references('case_file.id'))
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .addColumn('person_id', 'integer', (column) => column.references('person.id'))
    .addColumn('at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('case_change_once_a_revision', ['case_id', 'revision'])
    .execute()

  await db.schema.createTable('ticket')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('case_id', 'integer', (column) => column.notNull().unique().references('case_file.id'))
    .addColumn('state', 'text', (column) => column.notNull())
    .addColumn('urgent', 'integer', (column) => column.notNull())
    .addColumn('why', 'text', (column) => column.notNull())
    .addColumn('opened_at', 'text', (column) => column.notNull())
    .addColumn('taken_by', 'integer', (column) => column.references('person.id'))
    .addColumn('taken_at', 'text')
    .addColumn('settled_at', 'text')
    .addColumn('reply', 'text')
    .addColumn('note', 'text')
    .execute()
  await db.schema.createIndex('ticket_by_need').on('ticket').columns(['state', 'urgent', 'opened_at']).execute()

  await db.schema.createTable('ticket_change')
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('ticket_id', 'integer', (column) => column.notNull().references('ticket.id'))
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('person_id', 'integer', (column) => column.references('person.id'))
    .addColumn('what', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('ticket_change_by_ticket').on('ticket_change').column('ticket_id').execute()

  await db.schema.createTable('contact')
    .addColumn('ticket_id', 'integer', (column) => column.primaryKey().notNull().references('ticket.id'))
    .addColumn('name', 'text')
    .addColumn('email', 'text')
    .addColumn('phone', 'text')
    .execute()
}

async function dropAll(db: Kysely<unknown>): Promise<void> {
  // Each table before the tables it refers to.
  for (const table of [
    'contact', 'ticket_change', 'ticket', 'case_change', 'case_file', 'sign_in_attempt', 'session', 'person',
  ]) {
    await db.schema.dropTable(table).execute()
  }
}
