import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serialize } from 'node:v8'
import type { TestProject } from 'vitest/node'
import { type GuideKeeping, loadSoundGuide } from '../src/guide/index.js'

declare module 'vitest' {
  export interface ProvidedContext {
    /** File with the guide of `trees`, compiled once for the whole run. */
    compiledGuide: string
    /** Where services that a test starts find guides compiled before in this run, that of `trees` among them. */
    guideKeeping: GuideKeeping
    /** Folder for what the test files of one run share. */
    sharedFolder: string
  }
}

/** What a run shares, made for the first of its projects; the others, each of which loads this file anew, find it here. */
const run = globalThis as { sharedByFrondlineTests?: Promise<{ readonly folder: string, readonly file: string, readonly keeping: GuideKeeping }> }

/** Compiles the shipped guide once: every test file would else spend seconds of its own on the same YAML. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  run.sharedByFrondlineTests ??= makeShared()
  const { folder, file, keeping } = await run.sharedByFrondlineTests
  project.provide('compiledGuide', file)
  project.provide('guideKeeping', keeping)
  project.provide('sharedFolder', folder)
  return () => rm(folder, { recursive: true, force: true })
}

async function makeShared() {
  const folder = await mkdtemp(join(tmpdir(), 'frondline-guide-'))
  const keeping = { folder: join(folder, 'guides'), program: 'this run' }
  const { guide, errors } = await loadSoundGuide('trees', '2026-11-25', keeping)
  if (guide === null) throw new Error(`The guide has ${errors.length} errors; see npx frondline proof.`)
  const file = join(folder, 'guide')
  await writeFile(file, serialize(guide))
  return { folder, file, keeping }
}
