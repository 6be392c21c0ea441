import type { Kysely, Migration } from 'kysely'
import type { ColumnKinds } from './column-kinds.js'

/** Weather stations and what they recorded, with where each record came from. */
export function weather({ rowNumber }: ColumnKinds): Migration {
  return {
    async up(db: Kysely<unknown>) {
      await db.schema.createTable('weather_station')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('name', 'text', (column) => column.notNull().unique())
        .addColumn('title', 'text', (column) => column.notNull())
        .addColumn('district', 'text', (column) => column.notNull())
        .addColumn('latitude', 'double precision', (column) => column.notNull())
        .addColumn('longitude', 'double precision', (column) => column.notNull())
        .addColumn('clock_minutes', 'integer', (column) => column.notNull())
        .execute()
      await db.schema.createTable('weather_read')
        .addColumn('id', rowNumber.type, (column) => rowNumber.build(column))
        .addColumn('station_id', 'integer', (column) => column.notNull().references('weather_station.id'))
        .addColumn('origin', 'text', (column) => column.notNull())
        .addColumn('begun_at', 'text', (column) => column.notNull())
        .addColumn('ended_at', 'text')
        .addColumn('outcome', 'text')
        .addColumn('kept', 'integer', (column) => column.notNull())
        .addColumn('faults', 'integer', (column) => column.notNull())
        .addColumn('why', 'text')
        .execute()
      await db.schema.createIndex('weather_read_of_station').on('weather_read').columns(['station_id', 'id']).execute()
      await db.schema.createTable('weather_day')
        .addColumn('station_id', 'integer', (column) => column.notNull())
        .addColumn('day', 'text', (column) => column.notNull())
        .addColumn('min_c', 'double precision')
        .addColumn('max_c', 'double precision')
        .addColumn('rain_mm', 'double precision')
        .addColumn('read_id', 'integer', (column) => column.notNull())
        .addPrimaryKeyConstraint('weather_day_once', ['station_id', 'day'])
        .execute()
      await db.schema.createTable('weather_hour')
        .addColumn('station_id', 'integer', (column) => column.notNull())
        .addColumn('hour', 'text', (column) => column.notNull())
        .addColumn('temperature_c', 'double precision')
        .addColumn('humidity_pct', 'double precision')
        .addColumn('rain_mm', 'double precision')
        .addColumn('wet_minutes', 'double precision')
        .addColumn('read_id', 'integer', (column) => column.notNull())
        .addPrimaryKeyConstraint('weather_hour_once', ['station_id', 'hour'])
        .execute()
    },
    async down(db: Kysely<unknown>) {
      await db.schema.dropTable('weather_hour').execute()
      await db.schema.dropTable('weather_day').execute()
      await db.schema.dropTable('weather_read').execute()
      await db.schema.dropTable('weather_station').execute()
    },
  }
}
