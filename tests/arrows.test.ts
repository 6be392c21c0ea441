import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'

const root = new URL('..', import.meta.url).pathname
const cruiser = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs')

/** Runs the arrows on the folders below `cwd`; `npm test` has no other run of them. */
function cruise(cwd: string, folders: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [cruiser, '--config', join(root, '.dependency-cruiser.cjs'), ...folders], { cwd, encoding: 'utf8' })
  return { ok: status === 0, said: `${stdout}${stderr}` }
}

let copy: string | null = null
afterEach(() => {
  if (copy !== null) rmSync(copy, { recursive: true, force: true })
  copy = null
})

/** Runs the arrows on a small source tree of its own, with the same rooms. */
function cruiseFiles(files: Readonly<Record<string, string>>) {
  copy = mkdtempSync(join(tmpdir(), 'frondline-arrows-'))
  for (const [path, text] of Object.entries({ 'tsconfig.json': '{ "compilerOptions": { "module": "NodeNext" } }', ...files })) {
    mkdirSync(dirname(join(copy, path)), { recursive: true })
    writeFileSync(join(copy, path), text)
  }
  return cruise(copy, ['src'])
}

const STORE = 'export const y = 1\n'

describe('the arrows between the rooms', { timeout: 120_000 }, () => {
  it('hold in the source', () => {
    const { ok, said } = cruise(root, ['src', 'shared'])
    expect(said).toContain('no dependency violations found')
    expect(ok).toBe(true)
  })

  it('let the desk reach the store', () => {
    expect(cruiseFiles({ 'src/store/y.ts': STORE, 'src/desk/x.ts': 'import { y } from \'../store/y.js\'\nexport const x = y\n' }).ok).toBe(true)
  })

  it('refuse an engine that reaches the store', () => {
    const { ok, said } = cruiseFiles({ 'src/store/y.ts': STORE, 'src/engine/x.ts': 'import { y } from \'../store/y.js\'\nexport const x = y\n' })
    expect(said).toMatch(/error engine-imports-only-engine-season-guide: src\/engine\/x\.ts → ?\s*src\/store\/y\.ts/)
    expect(ok).toBe(false)
  })

  it('count an import of types alone', () => {
    const { ok, said } = cruiseFiles({ 'src/engine/y.ts': 'export type Y = 1\n', 'src/guide/x.ts': 'import type { Y } from \'../engine/y.js\'\nexport const x: Y = 1\n' })
    expect(said).toContain('error guide-imports-only-guide: src/guide/x.ts')
    expect(ok).toBe(false)
  })

  it('refuse a file, network or clock in a pure room', () => {
    const { ok, said } = cruiseFiles({ 'src/match/x.ts': 'import { readFileSync } from \'node:fs\'\nexport const x = readFileSync\n' })
    expect(said).toContain('error pure-rooms-touch-nothing-outside: src/match/x.ts')
    expect(ok).toBe(false)
  })

  it('refuse two files that import each other', () => {
    const { ok, said } = cruiseFiles({
      'src/guide/x.ts': 'import { y } from \'./y.js\'\nexport const x = (): number => y()\n', 'src/guide/y.ts': 'import { x } from \'./x.js\'\nexport const y = (): number => x()\n',
    })
    expect(said).toContain('error no-cycles: src/guide/')
    expect(ok).toBe(false)
  })
})
