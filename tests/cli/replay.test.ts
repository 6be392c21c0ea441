import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { append, lettuceFiles, lettuceGuide } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, jsonLines, runFrondline } from './run-frondline.js'

const withTwoMore = { 'casebook/lettuce.yaml': append(`  - case: lettuce-2
    words: "holes in the leaves of my lettuce"
    on: 2026-06-01
    host: lettuce
    findings: { slime: "yes" }
    ends: { problem: tipburn }
  - case: holes-3
    words: "holes in the leaves of my lettuce"
    on: 2026-06-01
    host: lettuce
    findings: { slime: "yes" }
    ends: { problem: tipburn }
    also right: [slugs]
`) }

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeAll(async () => { folder = await makeGuideFolder(lettuceFiles(withTwoMore)) })
afterAll(() => folder.clear())

const replay = (...args: string[]) => runFrondline(['replay', '--trees', folder.trees, ...args])

describe('frondline replay', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('plays every case, shows each and counts, and ends with 1 for a case that does not end as expected', async () => {
    const { exit, out, err } = await replay()
    expect({ exit, err }).toEqual({ exit: 1, err: '' })
    expect(out.split('\n').filter((line) => /^(ok {3}|NOT )/.test(line))).toEqual([
      'ok   holes-3  from lettuce/slime', 'ok   lettuce-1  from lettuce/underside', 'NOT  lettuce-2  from lettuce/slime',
    ])
    expect(out).toMatch(/\n {7}slime: yes\n {7}concluded slugs \(\d+ %\); expected tipburn\n/)
    expect(out.trimEnd().split('\n').pop()).toBe('2 of 3 cases end as expected (66.7 %); 1 wrong and sure; median 1 checks.')
  })

  it('plays only the cases whose name contains a text, and ends with 0 when they end as expected', async () => {
    const { exit, out } = await replay('--only', 'holes')
    expect(exit).toBe(0)
    expect(out).toMatch(/^ok {3}holes-3/)
    expect(out.trimEnd().split('\n').pop()).toBe('1 of 1 cases end as expected (100.0 %); 0 wrong and sure; median 1 checks.')
  })

  it('shows only the failed cases, and still counts all', async () => {
    const { exit, out } = await replay('--failed')
    expect(exit).toBe(1)
    expect(out.split('\n').filter((line) => /^(ok {3}|NOT )/.test(line))).toEqual(['NOT  lettuce-2  from lettuce/slime'])
    expect(out).toContain('2 of 3 cases')
  })

  it('writes one JSON line a case and one for the summary', async () => {
    const { exit, out } = await replay('--json')
    expect(exit).toBe(1)
    const lines = jsonLines(out)
    expect(lines).toHaveLength(4)
    expect(lines[2]).toMatchObject({
      case: 'lettuce-2', asked: [{ check: 'slime', answer: 'yes' }], concluded: 'slugs', expected: 'tipburn', ok: false, start: { host: 'lettuce', node: 'slime' },
    })
    expect(lines[3]).toEqual({ summary: { cases: 3, ok: 2, share: 2 / 3, wrongAndSure: 1, medianChecks: 1, guide: lettuceGuide(withTwoMore).hash } })
  })

  it('writes JSON for the failed ones alone', async () => {
    expect(jsonLines((await replay('--json', '--failed')).out)).toMatchObject([{ case: 'lettuce-2' }, { summary: { cases: 3, ok: 2 } }])
  })

  it('says that no case has such a name', async () => {
    expect(await replay('--only', 'nothing-like-it')).toEqual({ exit: 0, out: 'The casebook has no such cases.\n', err: '' })
  })
})
