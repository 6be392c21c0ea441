import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadGuide } from '../../src/guide/index.js'
import { makeGuideFolder } from './guide-folder.js'
import { brief, lettuceFiles, lettuceGuide, lettuceText, TODAY } from './lettuce-world.js'

let folder: Awaited<ReturnType<typeof makeGuideFolder>>
beforeEach(async () => { folder = await makeGuideFolder(lettuceFiles()) })
afterEach(() => folder.clear())

describe('loading a guide from a folder', () => {
  it('gives the same guide as its files do', async () => {
    const { guide, errors, warnings } = await loadGuide(folder.trees, TODAY)
    expect(errors).toEqual([])
    expect(warnings).toEqual([])
    expect(guide?.hash).toBe(lettuceGuide().hash)
  })

  it('reads .yml as well, and nothing else', async () => {
    await folder.write('checks/README.md', 'not: [yaml')
    await folder.write('checks/slime.yaml.orig', 'not: [yaml')
    await folder.write('checks/slime.yml', lettuceText('checks/slime.yaml'))
    const { errors } = await loadGuide(folder.trees, TODAY)
    expect(brief(errors)).toEqual([{ code: 'DUPLICATE_NAME', at: `${folder.trees}/checks/slime.yml:1:8`, nearest: [] }])
  })

  it('names a file of another folder by its whole path, and one of this folder by the path an author would type', async () => {
    await folder.write('checks/slime.yaml', 'check: [')
    expect((await loadGuide(folder.trees, TODAY)).errors.find(({ code }) => code === 'YAML')?.at[0].file.path).toBe(`${folder.trees}/checks/slime.yaml`)
    const here = process.cwd()
    process.chdir(dirname(folder.trees))
    try {
      expect((await loadGuide('trees', TODAY)).errors.find(({ code }) => code === 'YAML')?.at[0].file.path).toBe('trees/checks/slime.yaml')
    } finally {
      process.chdir(here)
    }
  })

  it('fails with the file system\'s own error for a folder that is not there', async () => {
    await expect(loadGuide(join(folder.trees, 'nowhere'), TODAY)).rejects.toMatchObject({ code: 'ENOENT' })
  })
})
