import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles, lettuceGuide, swap } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, jsonLines, runAndReadOneLine, runFrondline } from './run-frondline.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeAll(async () => { folder = await makeGuideFolder(lettuceFiles()) })
afterAll(() => folder.clear())

describe('frondline match', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('writes one JSON line for each plain or JSON line, in order, and skips empty ones', async () => {
    const index = buildMatchIndex(lettuceGuide())
    const questions = ['pale patches on the cos', 'holes in the leaves 🥬🐌 of my lettuce', 'sap burned my skin', '{curly', '[1, 2]', '"quoted"', 'été, naïve, 葉']
    const input = ['', questions[0], '   ', JSON.stringify({ text: questions[1], from: 'a caller' }), `  {"text": ${JSON.stringify(questions[2])}}`, ...questions.slice(3), ''].join('\n')
    const { exit, out, err } = await runFrondline(['match', '--trees', folder.trees], { input })
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(jsonLines(out)).toEqual(questions.map((question) => JSON.parse(JSON.stringify(matchLine(index, question))) as unknown))
    expect(jsonLines(out)[2]).toMatchObject({ text: 'sap burned my skin', redFlags: ['sap-on-skin'] })
  })

  it('reads lines that end as on Windows, and a last line without an end', async () => {
    const { out } = await runFrondline(['match', '--trees', folder.trees], { input: 'my cos\r\nslugs' })
    expect(jsonLines(out)).toMatchObject([{ text: 'my cos' }, { text: 'slugs' }])
  })

  it('names the line of a JSON object without a text, goes on, and ends with 1', async () => {
    const { exit, out, err } = await runFrondline(['match', '--trees', folder.trees], { input: 'my cos\n\n{"txt": "my cos"}\n{"text": 7}\nslugs\n' })
    expect(jsonLines(out)).toMatchObject([{ text: 'my cos' }, { text: 'slugs' }])
    expect(err).toBe([3, 4].map((line) => `Line ${line} is a JSON object without a "text" that is a string. Expected {"text": "the question"}.\n`).join(''))
    expect(exit).toBe(1)
  })

  it('takes one question as words, with or without quotes, and reads no input then', async () => {
    for (const words of [['sap burned my skin'], ['sap', 'burned', 'my', 'skin']]) {
      const { exit, out } = await runFrondline(['match', ...words, '--trees', folder.trees], { input: 'slugs' })
      expect(exit).toBe(0)
      expect(jsonLines(out)).toMatchObject([{ text: 'sap burned my skin', redFlags: ['sap-on-skin'] }])
    }
  })

  it('writes nothing for no input', async () => {
    expect(await runFrondline(['match', '--trees', folder.trees])).toEqual({ exit: 0, out: '', err: '' })
  })

  it('ends quietly when its reader goes away after one line', async () => {
    const { exit, out, err } = await runAndReadOneLine(['match', '--trees', folder.trees], 'pale patches on the cos\n'.repeat(5000))
    expect(JSON.parse(out)).toMatchObject({ text: 'pale patches on the cos' })
    expect(err).toBe('')
    expect(exit).toBe(0)
  })

  it('prints the errors of a guide that does not compile, and matches nothing', async () => {
    const broken = await makeGuideFolder(lettuceFiles({ 'hosts/lettuce.yaml': swap('holes: slime', 'holes: slmie') }))
    try {
      const { exit, out, err } = await runFrondline(['match', '--trees', broken.trees], { input: 'my cos\n' })
      expect({ exit, out }).toEqual({ exit: 1, out: '' })
      expect(err).toContain(`${broken.trees}/hosts/lettuce.yaml:11:21  error UNKNOWN_NODE`)
      expect(err.trimEnd().split('\n').pop()).toBe(`The guide in "${broken.trees}" has 1 error. Mend them, then run frondline proof.`)
    } finally {
      await broken.clear()
    }
  })
})
