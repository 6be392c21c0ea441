import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvOf } from '../../../src/web/season/csv.js'

describe('a table as CSV', () => {
  // RFC 4180, section 2, by the number of its rule.
  it('ends every record, the last too, with CR and LF, and puts the heads first (rules 1 to 3)', () => {
    expect(csvOf({ heads: ['week', 'reports'], rows: [['2026-W20', 2.5], ['2026-W21', 0]] })).toBe('week,reports\r\n2026-W20,2.5\r\n2026-W21,0\r\n')
  })

  it('quotes a value that holds a comma, a quote or a line end, and doubles the quotes in it (rules 6 and 7)', () => {
    expect(csvOf({ heads: ['a'], rows: [['b,c'], ['d"e'], ['f\r\ng'], ['h\ni']] })).toBe('a\r\n"b,c"\r\n"d""e"\r\n"f\r\ng"\r\n"h\ni"\r\n')
  })

  it('leaves a missing value empty, and keeps blanks as they are (rule 4)', () => {
    expect(csvOf({ heads: ['a', 'b', 'c'], rows: [[null, ' x ', null]] })).toBe('a,b,c\r\n, x ,\r\n')
  })

  it('lets no name become a formula, and leaves numbers below zero alone', () => {
    // What spreadsheets take for a formula: OWASP, CSV Injection (=, +, -, @, tab, carriage return), from memory.
    const rows = ['=1+1', '+1', '-1', '@x', '\tx', '\rx'].map((name) => [name])
    const [, ...read] = parse(csvOf({ heads: ['name'], rows }), { record_delimiter: '\r\n' })
    expect(read.flat()).toEqual(rows.flat().map((name) => `'${name}`))
    expect(csvOf({ heads: ['°C'], rows: [[-1.5]] })).toBe('°C\r\n-1.5\r\n')
  })

  it('is read back as it was by another reader of CSV, whatever the names hold', () => {
    const name = fc.string({ unit: fc.constantFrom('a', ',', '"', '\r', '\n', ' ', '°', ';') }).filter((text) => !/^[\r]/.test(text))
    fc.assert(fc.property(fc.array(fc.tuple(name, name, fc.integer()), { minLength: 1 }), (rows) => {
      const read = parse(csvOf({ heads: ['x', 'y', 'z'], rows }), { record_delimiter: '\r\n', relax_column_count: false })
      expect(read).toEqual([['x', 'y', 'z'], ...rows.map((row) => row.map(String))])
    }))
  })
})
