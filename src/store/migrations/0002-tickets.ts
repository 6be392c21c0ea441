import { type Kysely, type Migration, sql } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** The whole life of a ticket: questions, samples, replies, notes, relations, search, and sealed contact details. */
export function ticketTables(kinds: ColumnKinds): Migration {
  return { up: (db: Kysely<unknown>) => makeAll(db, kinds), down: dropAll }
}

async function makeAll(db: Kysely<unknown>, { rowNumber }: ColumnKinds): Promise<void> {
  const numbered = (table: string) => db.schema.createTable(table)
    .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
    .addColumn('ticket_id', 'integer', (column) => column.notNull().references('ticket.id'))
    .addColumn('at', 'text', (column) => column.notNull())
    .addColumn('person_id', 'integer', (column) => column.notNull().references('person.id'))

  await db.schema.alterTable('ticket').addColumn('version', 'integer', (column) => column.notNull().defaultTo(0)).execute()
  await db.schema.alterTable('ticket').addColumn('merged_into', 'integer', (column) => column.references('ticket.id')).execute()
  await db.schema.alterTable('ticket').addColumn('waits_since', 'text', (column) => column.notNull().defaultTo('')).execute()
  await sql`update ticket set waits_since = opened_at`.execute(db)
  await db.schema.createIndex('ticket_by_wait').on('ticket').columns(['state', 'urgent', 'waits_since']).execute()
  await db.schema.createIndex('ticket_by_merge').on('ticket').column('merged_into').execute()

  await numbered('ticket_reply').addColumn('reply', 'text', (column) => column.notNull()).execute()
  await db.schema.createIndex('ticket_reply_by_ticket').on('ticket_reply').column('ticket_id').execute()
  await sql`insert into ticket_reply (ticket_id, at, person_id, reply)
    select id, settled_at, taken_by, reply from ticket where reply is not null`.execute(db)

  await numbered('ticket_note').addColumn('text', 'text', (column) => column.notNull()).execute()
  await db.schema.createIndex('ticket_note_by_ticket').on('ticket_note').column('ticket_id').execute()

  await numbered('ticket_question')
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('checks', 'text', (column) => column.notNull())
    .addColumn('photos', 'integer', (column) => column.notNull())
    .addColumn('answered_at', 'text')
    .execute()
  await db.schema.createIndex('ticket_question_by_ticket').on('ticket_question').column('ticket_id').execute()

  await numbered('lab_sample')
    .addColumn('number', 'text', (column) => column.notNull())
    .addColumn('packed', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('lab_sample_by_ticket').on('lab_sample').column('ticket_id').execute()
  await numbered('lab_result')
    .addColumn('number', 'text', (column) => column.notNull())
    .addColumn('text', 'text', (column) => column.notNull())
    .execute()
  await db.schema.createIndex('lab_result_by_ticket').on('lab_result').column('ticket_id').execute()

  await db.schema.createTable('ticket_relation')
    .addColumn('one_id', 'integer', (column) => column.notNull().references('ticket.id'))
    .addColumn('other_id', 'integer', (column) => column.notNull().references('ticket.id'))
    .addPrimaryKeyConstraint('ticket_relation_once', ['one_id', 'other_id'])
    .execute()
  await db.schema.createIndex('ticket_relation_by_other').on('ticket_relation').column('other_id').execute()

  await db.schema.createTable('ticket_seek')
    .addColumn('ticket_id', 'integer', (column) => column.primaryKey().notNull().references('ticket.id'))
    .addColumn('text', 'text', (column) => column.notNull())
    .addColumn('host', 'text')
    .addColumn('problem', 'text')
    .addColumn('district', 'text')
    .execute()
  // Tickets from before are found by their words and their district; plant and problem follow with their next change.
  await sql`insert into ticket_seek (ticket_id, text, host, problem, district)
    select ticket.id, lower(case_file.words), null, null, case_file.district
    from ticket inner join case_file on case_file.id = ticket.case_id`.execute(db)

  await db.schema.createTable('contact_sealed')
    .addColumn('ticket_id', 'integer', (column) => column.primaryKey().notNull().references('ticket.id'))
    .addColumn('sealed', 'text', (column) => column.notNull())
    .addColumn('email_mark', 'text')
    .addColumn('phone_mark', 'text')
    .execute()
  await db.schema.createIndex('contact_by_email').on('contact_sealed').column('email_mark').execute()
  await db.schema.createIndex('contact_by_phone').on('contact_sealed').column('phone_mark').execute()
  await numbered('contact_read').execute()
  await db.schema.createIndex('contact_read_by_ticket').on('contact_read').column('ticket_id').execute()

  await numbered('casebook_case')
    .addColumn('words', 'text', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .execute()
  await numbered('tree_suggestion')
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('content', 'text', (column) => column.notNull())
    .execute()
}

async function dropAll(db: Kysely<unknown>): Promise<void> {
  for (const table of [
    'tree_suggestion', 'casebook_case', 'contact_read', 'contact_sealed', 'ticket_seek', 'ticket_relation', 'lab_result',
    'lab_sample', 'ticket_question', 'ticket_note', 'ticket_reply',
  ]) {
    await db.schema.dropTable(table).execute()
  }
  await db.schema.dropIndex('ticket_by_wait').execute()
  await db.schema.dropIndex('ticket_by_merge').execute()
  for (const column of ['waits_since', 'merged_into', 'version']) {
    await db.schema.alterTable('ticket').dropColumn(column).execute()
  }
}
