import { parse } from 'yaml'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeAll(async () => { folder = await makeGuideFolder(lettuceFiles()) })
afterAll(() => folder.clear())

const report = (...args: string[]) => runFrondline(['report', '--trees', folder.trees, '--cases', '300', ...args])
const suggest = (...args: string[]) => runFrondline(['suggest', '--trees', folder.trees, ...args])

describe('frondline report', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('prints of each host what was asked, what was right and what is weakest, the same for the same seed', async () => {
    const { exit, out, err } = await report('--seed', '3')
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(out).toMatch(/^lettuce: 3 problems, 3 checks, 300 made-up cases\n {2}checks asked {6}tree \d\.\d\d {3}engine \d\.\d\d {3}at least 1\.00 \(\d\.\d\d times; longest case \d+\)\n/)
    expect(out).toMatch(/\n {2}why more {10}a check asked tells 0\.\d\d bits on average: /)
    expect(out).toMatch(/\n {2}right {13}tree [\d.]+ % {3}engine's first [\d.]+ %/)
    expect(out).toMatch(/\n {2}weakest {11}\S+ [\d.]+ % of \d+/)
    expect((await report('--seed', '3')).out).toBe(out)
  })

  it('says of the tree for any plant why its first guess is less often right', async () => {
    const { exit, out } = await runFrondline(['report', '--cases', '120', 'unknown-plant'])
    expect(exit).toBe(0)
    expect(out).toMatch(/\n {2}why less right {4}in [\d.]+ % of cases "something not listed here" leads at the end/)
  })

  it('gives the same as JSON', async () => {
    const { exit, out } = await report('--json', 'lettuce')
    expect(exit).toBe(0)
    expect(JSON.parse(out)).toMatchObject([{ host: 'lettuce', problems: 3, checks: 3, cases: 300, passedOn: 0 }])
  })

  it('says what it expected of a host that is not there and of a bad number of cases', async () => {
    const missing = await report('letuce')
    expect(missing).toMatchObject({ exit: 1, out: '' })
    expect(missing.err).toContain('There is no host "letuce".')
    expect(missing.err).toContain('lettuce')
    const none = await runFrondline(['report', '--trees', folder.trees, '--cases', '0'])
    expect(none).toMatchObject({ exit: 1, out: '' })
    expect(none.err).toContain('--cases is "0". Expected a whole number of at least 1.')
  })
})

describe('frondline suggest', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('draws the tree that the profiles alone would give, as YAML, beside the authored one', async () => {
    const { exit, out, err } = await suggest('lettuce')
    expect(exit).toBe(0)
    const drawn = parse(out) as { host: string; start: string; nodes: Record<string, { check: string }> }
    expect(drawn.host).toBe('lettuce')
    // What is on top of the leaf tells most of the three problems apart.
    expect(drawn.nodes[drawn.start]?.check).toBe('leaf-top')
    expect(err).toMatch(/^Drawn tree: \d\.\d\d checks on average, .*\nAuthored tree: \d\.\d\d checks on average, /)
  })

  it('says which hosts are like one that is not there', async () => {
    const { exit, err } = await suggest('letuce')
    expect(exit).toBe(1)
    expect(err).toContain('lettuce')
  })
})
