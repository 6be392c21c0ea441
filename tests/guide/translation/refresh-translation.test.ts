import { describe, expect, it } from 'vitest'
import { languageReport, refreshFiles, type SourceFile } from '../../../src/guide/index.js'
import { lettuceFiles, swap } from '../lettuce-world.js'
import { SPANISH_CHECK, spanishFiles } from './spanish-lettuce.js'

const refreshed = (files: readonly SourceFile[], checked = false) => {
  const made = refreshFiles(files, 'es', 'checks/leaf-top', { checked })
  if (!('files' in made) || made.files[0] === undefined) throw new Error('Nothing was refreshed.')
  return made.files[0]
}
const withFile = (text: string, changes: Parameters<typeof lettuceFiles>[0] = {}): SourceFile[] => [...lettuceFiles(changes), { path: 'trees/checks/leaf-top.es.yaml', text }]
const fourLeaves = { 'checks/leaf-top.yaml': swap('Look at three leaves.', 'Look at four leaves.') }

describe('writing a translation file', () => {
  it('begins one with empty keys and the English above them', () => {
    expect(refreshed(lettuceFiles())).toMatchObject({ path: 'trees/checks/leaf-top.es.yaml', isChanged: true, missing: 6 })
    expect(refreshed(lettuceFiles()).text).toMatch(/^check: leaf-top\ncomplete: no\n# en: What do the marks on top look like\?\nask:\n# en: Look at three leaves.\nhow:\n/)
  })

  it('counts what is filled in there as made from the English shown', () => {
    const { text } = refreshed(lettuceFiles())
    const filled = withFile(text.replace('how:', 'how: Mire tres hojas.'))
    const [row] = languageReport(filled, 'es').rows.filter(({ name }) => name === 'lettuce')
    expect(row?.files.find(({ path }) => path.endsWith('leaf-top.es.yaml'))).toMatchObject({ isThere: true, outOfDate: [] })
    expect(refreshed(filled).missing).toBe(5)
  })

  it('keeps what is there, in the order of the original, and drops the comment of what is done', () => {
    const { text } = refreshed(withFile('check: leaf-top\nwhy: El borde dice mucho. # seguro\nask: ¿Cómo son?\n'), true)
    expect(text).toContain('ask: ¿Cómo son?\n# en: Look at three leaves.\nhow:\nwhy: El borde dice mucho. # seguro\n')
  })

  it('marks what is out of date with the new English, and takes the mark away when it was checked', () => {
    const stale = spanishFiles({ 'checks/leaf-top.es.yaml': SPANISH_CHECK }, fourLeaves)
    const marked = refreshed(stale)
    expect(marked.text).toContain('# OUT OF DATE, the English now says: Look at four leaves.\nhow: Mire tres hojas.')
    expect(marked.outOfDate).toBe(1)
    const again = refreshed(withFile(marked.text, fourLeaves))
    expect(again.isChanged).toBe(false)
    const checked = refreshed(withFile(marked.text, fourLeaves), true)
    expect(checked.text).not.toContain('OUT OF DATE')
    expect(refreshed(withFile(checked.text, fourLeaves)).outOfDate).toBe(0)
  })

  it('keeps keys that the original has not, for the translator to judge', () => {
    expect(refreshed(withFile('check: leaf-top\nanswers: { brown edgs: { shown: bordes } }\n')).text).toContain('brown edgs: { shown: bordes }')
  })

  it('writes a host with its problems and checks, and names what it does not know', () => {
    const made = refreshFiles(lettuceFiles(), 'es', 'lettuce', { checked: false })
    expect('files' in made ? made.files.map(({ path }) => path.replace('trees/', '')) : []).toEqual([
      'hosts/lettuce.es.yaml', 'problems/downy-mildew.es.yaml', 'problems/slugs.es.yaml', 'problems/tipburn.es.yaml',
      'checks/leaf-top.es.yaml', 'checks/leaf-underside.es.yaml', 'checks/slime.es.yaml',
    ])
    expect(refreshFiles(lettuceFiles(), 'es', 'letuce', { checked: false })).toEqual({ unknown: 'letuce', nearest: ['lettuce'] })
  })
})
