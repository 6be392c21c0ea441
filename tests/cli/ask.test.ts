import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles, swap } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeAll(async () => { folder = await makeGuideFolder(lettuceFiles()) })
afterAll(() => folder.clear())

const ask = (lines: readonly string[], args: readonly string[] = []) =>
  runFrondline(['ask', ...args, '--trees', folder.trees, '--on', '2026-05-14'], { input: lines.map((line) => `${line}\n`).join('') })

/** How often a text stands in another. */
const times = (text: string, part: string) => text.split(part).length - 1

const TOP = 'What do the marks on top look like?'
const UNDER = 'What is under the leaf?'

describe('frondline ask', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('walks a piped case from the question to the advice', async () => {
    const { exit, out, err } = await ask(['something on the leaves of my lettuce', '1', '1', '1'])
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    const order = ['What is wrong, in your own words?', 'Which is nearest?', '1  Lettuce: something on the leaves', TOP, UNDER, 'Pick off the bad leaves.', 'Most likely: A downy-mildew', 'Do now']
    const places = order.map((text) => out.indexOf(text))
    expect(places).not.toContain(-1)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(out).toContain('for: What is under the leaf? white fuzz (usually seen with it)')
  })

  it('takes the question from the command line', async () => {
    const { exit, out } = await ask(['1', 'q'], ['pale', 'patches', 'on', 'the', 'cos'])
    expect(exit).toBe(0)
    expect(out).not.toContain('in your own words')
    expect(out).toContain('  1  Lettuce: pale patches on the leaves')
    expect(out).toContain(UNDER)
  })

  it('says what it expected of a bad number, and asks again', async () => {
    const { out } = await ask(['something on the leaves', '0', 'seven', '', '1', '9', 'x', '', '1', 'q'])
    expect(times(out, 'Expected a number from 1 to ')).toBe(6)
    expect(times(out, 'Expected a number from 1 to 3, n, c, b or q.')).toBe(3)
    expect(times(out, TOP)).toBe(4)
    expect(times(out, UNDER)).toBe(1)
  })

  it('takes back the last answer with b, and the whole way to the first check', async () => {
    const { out } = await ask(['something on the leaves', '1', '1', 'b', 'b', '3', '3'])
    expect(times(out, `${TOP}\n`)).toBe(3)
    expect(times(out, UNDER)).toBe(3) // once taken back, once to confirm, once as a reason
    expect(out).toContain('Most likely: A tipburn')
  })

  it('takes not sure and can\'t look now for answers', async () => {
    const { exit, out } = await ask(['something on the leaves', '1', 'n', 'c', 'c'])
    expect(exit).toBe(0)
    expect([TOP, UNDER, 'Is there slime?'].map((check) => times(out, check))).toEqual([1, 1, 1])
    expect(out).toMatch(/A specialist should see this\.\n\nSo far it could be:\n {3}\d\d %  A downy-mildew\n/)
  })

  it('stops when the input ends early, without a fault', async () => {
    const { exit, out, err } = await ask(['something on the leaves', '1'])
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(out).toContain(TOP)
    expect(out.trimEnd().split('\n').pop()).toBe('Stopped.')
    expect(out).not.toContain('Most likely')
  })

  it('shows the card of a red flag before anything else, with the number to call, and goes on only when told to', async () => {
    const burned = await ask(['the sap burned my skin and my lettuce has pale patches on the leaves', 'n'])
    expect(burned.out).toContain('! Sap on the skin\n  - Rinse with cool running water.\n  Call Larkmoor poison line: 555-0111\n')
    expect(burned.out).not.toContain('Which is nearest?')
    const onward = await ask(['sap burned my skin, my lettuce has pale patches on the leaves', 'yes', '1', 'q'])
    expect(onward.out.indexOf('! Sap on the skin')).toBeLessThan(onward.out.indexOf('Which is nearest?'))
    expect(onward.out).toContain(UNDER)
  })

  it('shows the card also when an answer raises the red flag', async () => {
    const { out } = await ask(['pale patches on the cos', '1', '2', 'n'])
    expect(out.indexOf(UNDER)).toBeLessThan(out.indexOf('! Sap on the skin'))
    expect(out).not.toContain('Most likely')
  })

  it('ends at the card where the red flag says stop', async () => {
    const stopping = await makeGuideFolder(lettuceFiles({ 'red-flags/sap-on-skin.yaml': swap('then: carry on', 'then: stop') }))
    try {
      const { exit, out } = await runFrondline(['ask', 'sap', 'burned', 'my', 'skin', '--trees', stopping.trees], { input: 'y\n' })
      expect(exit).toBe(0)
      expect(out).toContain('! Sap on the skin')
      expect(out).not.toContain('go on with the plant question')
    } finally {
      await stopping.clear()
    }
  })

  it('refuses a date that is no date', async () => {
    const { exit, out, err } = await runFrondline(['ask', 'cos', '--trees', folder.trees, '--on', '2026-02-30'])
    expect({ exit, out }).toEqual({ exit: 1, out: '' })
    expect(err).toContain('Expected a date like 2026-05-14.')
  })
})
