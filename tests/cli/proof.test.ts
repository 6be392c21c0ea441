import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { errorCodes } from '../../src/guide/index.js'
import { makeGuideFolder } from '../guide/guide-folder.js'
import { lettuceFiles, lettuceGuide, swap } from '../guide/lettuce-world.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeEach(async () => { folder = await makeGuideFolder(lettuceFiles()) })
afterEach(() => folder.clear())

const misspell = swap('holes: slime', 'holes: slmie')
const changed = (path: string, change: (text: string) => string): Promise<void> =>
  folder.write(path, lettuceFiles({ [path]: change }).find((file) => file.path === `trees/${path}`)?.text ?? '')

describe('frondline proof', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('ends with 0 on the guide of this clone and counts what is in it', async () => {
    const { exit, out, err } = await runFrondline(['proof'])
    expect(err).toBe('')
    expect(out.trimEnd().split('\n').pop()).toMatch(/^\d+ hosts, \d+ problems, \d+ checks, \d+ worked cases: no errors, \d+ warnings?\. Guide [0-9a-f]{12}\.$/)
    expect(exit).toBe(0)
  })

  it('ends with 1 and points at a misspelt node in a copy of the guide of this clone', async () => {
    const copy = await mkdtemp(join(tmpdir(), 'frondline-proof-'))
    try {
      await cp('trees', join(copy, 'trees'), { recursive: true })
      const lettuce = join(copy, 'trees/hosts/lettuce.yaml')
      const text = await readFile(lettuce, 'utf8')
      const start = /^start: (\S+)$/m.exec(text)?.[1] ?? ''
      await writeFile(lettuce, text.replace(/^start: \S+$/m, `start: ${start}x`))
      const line = text.slice(0, text.search(/^start: /m)).split('\n').length
      const { exit, out } = await runFrondline(['proof', join(copy, 'trees')])
      expect(exit).toBe(1)
      expect(out).toContain(`${lettuce}:${line}:8  error UNKNOWN_NODE\n  The tree of "lettuce" has no node "${start}x". Expected the name of one of its nodes. Did you mean "${start}"`)
      expect(out.trimEnd().split('\n').pop()).toMatch(/^\d+ errors?, so there is no guide\.$/)
    } finally {
      await rm(copy, { recursive: true, force: true })
    }
  })

  it('shows the line with a caret under the words at fault', async () => {
    await changed('hosts/lettuce.yaml', misspell)
    expect(await runFrondline(['proof', folder.trees])).toEqual({
      exit: 1, err: '',
      out: `${folder.trees}/hosts/lettuce.yaml:11:21  error UNKNOWN_NODE
  The tree of "lettuce" has no node "slmie". Expected the name of one of its nodes. Did you mean "slime"?
  10 |       pale patches: underside
  11 |       ragged holes: slmie
     |                     ^^^^^

1 error, so there is no guide.
`,
    })
  })

  it('prints one JSON object with --json, for a sound guide and for a broken one', async () => {
    const sound = await runFrondline(['proof', folder.trees, '--json'])
    expect(JSON.parse(sound.out)).toEqual({ ok: true, hash: lettuceGuide().hash, errors: [], warnings: [] })
    expect(sound.exit).toBe(0)
    await changed('hosts/lettuce.yaml', misspell)
    const broken = await runFrondline(['proof', folder.trees, '--json'])
    expect(JSON.parse(broken.out)).toEqual({
      ok: false, hash: null, warnings: [], errors: [{
        severity: 'error', code: 'UNKNOWN_NODE', message: 'The tree of "lettuce" has no node "slmie". Expected the name of one of its nodes.',
        nearest: ['slime'], file: `${folder.trees}/hosts/lettuce.yaml`, line: 11, column: 21, alsoAt: [],
      }],
    })
    expect(broken.exit).toBe(1)
  })

  it('lets warnings pass, but not with --strict', async () => {
    await changed('problems/slugs.yaml', swap('2026-11-25', '2019-11-25'))
    const [plain, strict] = await Promise.all([runFrondline(['proof', folder.trees]), runFrondline(['proof', folder.trees, '--strict'])])
    expect(plain.out).toContain(`${folder.trees}/problems/slugs.yaml:16:17  warning OLD_REVIEW`)
    expect(plain.out).toContain('no errors, 1 warning. Guide ')
    expect(plain.exit).toBe(0)
    expect(strict.out).toBe(plain.out)
    expect(strict.exit).toBe(1)
  })

  it('explains a code, in capitals or not, and suggests one for a slip', async () => {
    const [known, unknown] = await Promise.all([runFrondline(['proof', '--explain', 'dead_end']), runFrondline(['proof', '--explain', 'DEADEND'])])
    expect(known).toEqual({ exit: 0, out: `DEAD_END: ${errorCodes.DEAD_END}\n`, err: '' })
    expect(unknown).toEqual({ exit: 1, out: '', err: 'There is no code "DEADEND". Did you mean "DEAD_END"?\n' })
  })

  it('says in a sentence that a folder is not there', async () => {
    expect(await runFrondline(['proof', join(folder.trees, 'nowhere')])).toEqual({
      exit: 1, out: '', err: `There is no folder "${folder.trees}/nowhere". Expected the folder that holds the guide, such as trees.\n`,
    })
  })
})
