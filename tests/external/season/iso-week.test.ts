import { describe, expect, it } from 'vitest'
import { isoWeekOf } from '../../../src/season/index.js'

/**
 * The first three are the examples that ISO 8601:2004 itself gives for week dates (4.1.4.2 and 3.2.2; from memory). The
 * others are the days about the turn of a year in the table of the Wikipedia article "ISO week date" (from memory).
 */
const workedDates: readonly (readonly [day: string, week: string])[] = [
  ['1985-04-12', '1985-W15'], ['1995-01-01', '1994-W52'], ['1996-12-31', '1997-W01'],
  ['2005-01-01', '2004-W53'], ['2005-01-02', '2004-W53'], ['2005-12-31', '2005-W52'], ['2006-01-01', '2005-W52'],
  ['2006-01-02', '2006-W01'], ['2006-12-31', '2006-W52'], ['2007-01-01', '2007-W01'], ['2007-12-30', '2007-W52'],
  ['2007-12-31', '2008-W01'], ['2008-12-28', '2008-W52'], ['2008-12-29', '2009-W01'], ['2009-12-31', '2009-W53'],
  ['2010-01-03', '2009-W53'], ['2010-01-04', '2010-W01'],
]

describe('weeks against ISO 8601', () => {
  it.each(workedDates)('puts %s into %s', (day, week) => {
    expect(isoWeekOf(day)).toBe(week)
  })
})
