import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore } from '../../src/store/index.js'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

let home: string
let guide: Awaited<ReturnType<typeof makeGuideFolder>>
const weather = (...args: readonly string[]) => runFrondline(['weather', ...args], { environment: { FRONDLINE_HOME: home } })
const add = (...more: readonly string[]) => weather('station', 'add', 'school', '--title', 'Holt Fen School', '--latitude', '52.4', '--longitude', '-0.1', '--trees', guide.trees, ...more)
const write = async (name: string, text: string): Promise<string> => {
  await writeFile(join(home, name), text)
  return join(home, name)
}

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-weather-cli-'))
  await (await openStore({ home })).close()
  guide = await makeGuideFolder(lettuceFiles())
})
afterAll(async () => {
  await guide.clear()
  await rm(home, { recursive: true, force: true })
})

describe('frondline weather', { timeout: 4 * COMMAND_TIMEOUT_MS }, () => {
  it('makes a station known in a district of the region, once', async () => {
    expect((await weather('stations')).out).toBe('There is no station yet. Add one with: frondline weather station add\n')
    expect((await add('--district', 'holt-fenn')).err).toContain('region.yaml has no district "holt-fenn". Did you mean "holt-fen"?')
    expect((await add('--district', 'holt-fen', '--clock', 'summer')).err).toContain('Expected an offset from UTC such as +01:00')
    expect(await add('--district', 'holt-fen', '--clock', '+01:00')).toMatchObject({ exit: 0, out: expect.stringContaining('Holt Fen School is known as school.') as string })
    expect(await add('--district', 'holt-fen')).toMatchObject({ exit: 1, err: 'There is a station "school" already. See frondline weather stations.\n' })
  })

  it('refuses a faulty file whole, each fault with its line and field, and takes it without its faulty lines when told to', async () => {
    const file = await write('june.csv', 'date,temperature_min_c,temperature_max_c,rain_mm\n2026-06-01,10,20,lots\n2026-06-02,11,21,0\n')
    const refused = await weather('import', file, '--station', 'school')
    expect(refused).toMatchObject({ exit: 1, out: '' })
    expect(refused.err).toBe(`${file}:2: field 4, rain_mm: "lots" does not fit. Expected a number from 0 to 2000 (mm) with a decimal point, or nothing where it is missing.\nNothing was kept. Mend the file, or leave out its faulty lines with --skip-faulty.\n`)
    expect((await weather('import', file, '--station', 'school', '--skip-faulty')).out).toBe('Kept 1 day of Holt Fen School.\n')
    expect((await weather('import', file, '--station', 'scool')).err).toContain('There is no station "scool". Did you mean "school"?')
    expect((await weather('import', join(home, 'none.csv'), '--station', 'school')).err).toContain('There is no file')
  })

  it('lists stations with how fresh they are, what is missing and what came of the last readings', async () => {
    const { out } = await weather('stations')
    expect(out).toContain('school  Holt Fen School, holt-fen\n  last day 2026-06-02, last hour none\n  missing of the last 30 days: temperature on ')
    expect(out).toMatch(/june\.csv: kept, 1 records, 1 faults; line 2: "lots" does not fit/)
    expect(JSON.parse((await weather('stations', '--json')).out)).toMatchObject([{ station: { id: 'school', clockMinutes: 60 }, last: { day: '2026-06-02' } }])
  })
})
