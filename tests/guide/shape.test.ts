import { describe, expect, it } from 'vitest'
import { compileLettuce, errorsOf, lettuceFiles, lettuceText, swap, TODAY } from './lettuce-world.js'
import { compileGuide } from '../../src/guide/index.js'

/** The errors of one changed file alone, without what follows from it in other files. */
function own(path: string, change: ((text: string) => string) | string) {
  return errorsOf({ [path]: change }).filter(({ at }) => at.startsWith(`trees/${path}:`))
}

function message(path: string, change: ((text: string) => string) | string): string | undefined {
  return compileLettuce({ [path]: change }).errors.find(({ code, at }) => code === 'SHAPE' && at[0].file.path === `trees/${path}`)?.message
}

describe('shaping one file', () => {
  it('accepts every kind of file as it should be', () => {
    expect(errorsOf()).toEqual([])
  })

  it('accepts an answer written without a value', () => {
    expect(errorsOf({ 'checks/slime.yaml': swap('answers: { yes: {}, no: {} }', 'answers:\n  yes:\n  no:\n') })).toEqual([])
  })

  it('accepts sources with and without a year', () => {
    expect(errorsOf({ 'problems/slugs.yaml': swap('sources: common practice', 'sources: [{ title: A leaflet, by: An office, year: 2019 }, { title: Another, by: An office }]') })).toEqual([])
  })

  it('points at a value that is not in its list, with the nearest one', () => {
    expect(own('checks/slime.yaml', swap('effort: hand lens', 'effort: hand lense')))
      .toEqual([{ code: 'SHAPE', at: 'trees/checks/slime.yaml:5:9', nearest: ['hand lens'] }])
    expect(message('checks/slime.yaml', swap('effort: hand lens', 'effort: hand lense')))
      .toBe('"effort" is "hand lense". Expected one of: glance, hand lens, dig, wait a day, send a sample.')
  })

  it('points at a frequency word that does not exist, with the nearest ones', () => {
    expect(own('problems/slugs.yaml', swap('yes: usually', 'yes: usualy')))
      .toEqual([{ code: 'SHAPE', at: 'trees/problems/slugs.yaml:10:17', nearest: ['usually'] }])
  })

  it('says that a key is missing, and points at what it is missing from', () => {
    expect(own('problems/slugs.yaml', swap('  bottom line: Pick off the bad leaves.\n', '')))
      .toEqual([{ code: 'SHAPE', at: 'trees/problems/slugs.yaml:12:3', nearest: [] }])
    expect(message('problems/slugs.yaml', swap('  bottom line: Pick off the bad leaves.\n', '')))
      .toBe('"advice → bottom line" is missing. Expected text.')
  })

  it('points at a key it does not know, with the nearest one', () => {
    expect(own('checks/slime.yaml', swap('why:', 'whi:'))).toEqual([
      { code: 'SHAPE', at: 'trees/checks/slime.yaml:1:1', nearest: [] },
      { code: 'UNKNOWN_KEY', at: 'trees/checks/slime.yaml:4:1', nearest: expect.arrayContaining(['why']) as unknown },
    ])
  })

  it('points at an unknown key deep inside', () => {
    expect(own('checks/leaf-top.yaml', swap('{ said as: [ragged holes] }', '{ said at: [ragged holes] }')))
      .toEqual([{ code: 'UNKNOWN_KEY', at: 'trees/checks/leaf-top.yaml:8:19', nearest: ['said as'] }])
  })

  it.each([
    ['checks/slime.yaml', 'check: slime', 'check: Slime', '1:8', '"check" is "Slime". Expected a name of small letters, digits and hyphens.'],
    ['checks/slime.yaml', 'ask: Is there slime?', 'ask:', '2:5', '"ask" is empty. Expected text.'],
    ['checks/slime.yaml', 'ask: Is there slime?', 'ask: "  "', '2:6', '"ask" is "  ". Expected some text.'],
    ['checks/slime.yaml', 'ask: Is there slime?', 'ask: [a]', '2:6', '"ask" is a list. Expected text.'],
    ['problems/slugs.yaml', '{ on: 2026-11-25 }', '{ on: 25.11.2026 }', '16:17', '"reviewed → on" is "25.11.2026". Expected a date like 2026-03-02.'],
    ['problems/slugs.yaml', '{ on: 2026-11-25 }', '{ on: 2026-02-30 }', '16:17', '"reviewed → on" is "2026-02-30". Expected a date like 2026-03-02.'],
    ['problems/slugs.yaml', 'sources: common practice', 'sources: common', '15:10', '"sources" is "common". Expected a list of { title, by, year }, or the words: common practice.'],
    ['problems/slugs.yaml', 'sources: common practice', 'sources: []', '15:10', '"sources" is an empty list. Expected at least 1 in the list.'],
    ['problems/slugs.yaml', 'cost: ordinary', 'cost: ordinary\nseason: { months: [0] }', '7:20', '"season → months → 0" is "0". Expected a number of at least 1.'],
    ['problems/slugs.yaml', 'cost: ordinary', 'cost: ordinary\nseason: { months: [13] }', '7:20', '"season → months → 0" is "13". Expected a number of at most 12.'],
    ['problems/slugs.yaml', 'cost: ordinary', 'cost: ordinary\nseason: { months: [4.5] }', '7:20', '"season → months → 0" is "4.5". Expected a whole number.'],
    ['problems/slugs.yaml', 'do now: [Pick them off today.]', 'do now: Pick them off today.', '13:11', '"advice → do now" is "Pick them off today.". Expected a list.'],
    ['region.yaml', 'answer within hours: 48', 'answer within hours: soon', '11:33', '"targets → answer within hours" is "soon". Expected a number.'],
    ['region.yaml', 'demonstration: true', 'demonstration: yes', '4:16', '"demonstration" is "yes". Expected true or false.'],
    ['region.yaml', 'urgent within hours: 4', 'urgent within hours: 0', '11:58', '"targets → urgent within hours" is "0". Expected a number above 0.'],
    ['hosts/lettuce.yaml', 'ragged holes: slime', 'ragged holes: { problm: slugs }', '11:21', '"nodes → top → answers → ragged holes" is a group of keys. Expected a node\'s name, { problem: id }, { hand over: "why" } or { host: id, node: name }.'],
    ['hosts/lettuce.yaml', 'called: [lettuce, cos]', 'called: []', '3:9', '"called" is an empty list. Expected at least one name.'],
    ['red-flags/sap-on-skin.yaml', 'phrases: [sap burned my skin]', 'words: [sap burned my skin]', '5:5', '"hear → 0" is a group of keys. Expected { all of: [[...], ...] } or { phrases: [...] }.'],
    ['region.yaml', 'language: en', 'language: English', '6:11', '"language" is "English". Expected a language tag like en.'],
    ['casebook/lettuce.yaml', 'ends: { problem: downy-mildew }', 'ends: { hand over: false }', '9:11', '"cases → 0 → ends" is a group of keys. Expected { problem: id }, { hand over: true } or { red flag: id }.'],
    ['casebook/lettuce.yaml', 'on: 2026-05-14', 'on: 14 May', '5:9', '"cases → 0 → on" is "14 May". Expected a date like 2026-03-02.'],
  ])('in %s refuses %s → %s', (path, from, to, at, text) => {
    expect(own(path, swap(from, to)).filter(({ code }) => code === 'SHAPE')).toEqual([{ code: 'SHAPE', at: `trees/${path}:${at}`, nearest: [] }])
    expect(message(path, swap(from, to))).toBe(text)
  })

  it('points at the key of a name that is no name', () => {
    expect(own('hosts/lettuce.yaml', swap('  slime:\n', '  Slime:\n'))).toEqual([{ code: 'SHAPE', at: 'trees/hosts/lettuce.yaml:20:3', nearest: [] }])
  })

  it('says that a file is empty, or no group of keys', () => {
    expect(own('checks/slime.yaml', '')).toEqual([{ code: 'SHAPE', at: 'trees/checks/slime.yaml:1:1', nearest: [] }])
    expect(message('checks/slime.yaml', '')).toBe('This file is empty. Expected keys with values.')
    expect(message('checks/slime.yaml', '- a\n- b\n')).toBe('This file is a list. Expected keys with values.')
  })

  it('says that a folder is not read, with the nearest one that is', () => {
    expect(errorsOf({ 'problem/slugs.yaml': lettuceText('problems/slugs.yaml') }))
      .toEqual([{ code: 'WRONG_FOLDER', at: 'trees/problem/slugs.yaml:1:1', nearest: ['problems'] }])
  })

  it('reports every mistake of a file, not only the first', () => {
    expect(own('checks/slime.yaml', (text) => text.replace('check: slime', 'check: Slime').replace('effort: hand lens', 'effort: crane').replace('why: Slugs leave it.\n', '')))
      .toEqual([
        { code: 'SHAPE', at: 'trees/checks/slime.yaml:1:1', nearest: [] },
        { code: 'SHAPE', at: 'trees/checks/slime.yaml:1:8', nearest: [] },
        { code: 'SHAPE', at: 'trees/checks/slime.yaml:4:9', nearest: [] },
      ])
  })

  it('says nothing of warnings while there is an error', () => {
    const { errors, warnings } = compileGuide(lettuceFiles({
      'checks/slime.yaml': swap('effort: hand lens', 'effort: crane'), 'problems/tipburn.yaml': swap('2026-11-25', '2019-11-25'),
    }), { today: TODAY })
    expect(errors.length).toBeGreaterThan(0)
    expect(warnings).toEqual([])
  })
})
