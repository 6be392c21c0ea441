import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serialize } from 'node:v8'
import type { TestProject } from 'vitest/node'
import { loadGuide } from '../src/guide/index.js'

declare module 'vitest' {
  export interface ProvidedContext {
    /** File with the guide of `trees`, compiled once for the whole run. */
    compiledGuide: string
    /** Folder for what the test files of one run share. */
    sharedFolder: string
  }
}

/** Compiles the shipped guide once: every test file would else spend seconds of its own on the same YAML. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { guide, errors } = await loadGuide('trees', '2026-11-25')
  if (guide === null) throw new Error(`The guide has ${errors.length} errors; see npx frondline proof.`)
  const folder = await mkdtemp(join(tmpdir(), 'frondline-guide-'))
  const file = join(folder, 'guide')
  await writeFile(file, serialize(guide))
  project.provide('compiledGuide', file)
  project.provide('sharedFolder', folder)
  return () => rm(folder, { recursive: true, force: true })
}
