import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compileGuide, printGuideError } from '../../src/guide/index.js'
import { lettuceFiles, TODAY } from './lettuce-world.js'

const files = lettuceFiles()

/** Changes a person, an editor or a bad merge could make to a file. */
const mutation = fc.record({
  file: fc.nat(files.length - 1),
  kind: fc.constantFrom('delete', 'insert', 'swap lines', 'repeat line', 'drop line', 'cut off'),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.integer({ min: 1, max: 12 }),
  text: fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('{', '}', '[', ': ', '\n', '\t', '&a ', '*a', '!!js ', '"', "'", '- ', 'null', '__proto__: 1\n', '<<: *a', '%', '😀', '\u0000')),
})

function mutate(text: string, { kind, at, length, text: added }: { kind: string; at: number; length: number; text: string }): string {
  const place = Math.floor(at * text.length)
  const lines = text.split('\n')
  const line = Math.floor(at * (lines.length - 1))
  switch (kind) {
    case 'delete': return text.slice(0, place) + text.slice(place + length)
    case 'insert': return text.slice(0, place) + added + text.slice(place)
    case 'swap lines': return [...lines.slice(0, line), lines[line + 1] ?? '', lines[line] ?? '', ...lines.slice(line + 2)].join('\n')
    case 'repeat line': return [...lines.slice(0, line), lines[line] ?? '', ...lines.slice(line)].join('\n')
    case 'drop line': return [...lines.slice(0, line), ...lines.slice(line + 1)].join('\n')
    default: return text.slice(0, place)
  }
}

describe('a damaged guide', () => {
  it('either compiles or is refused with a located error, and never throws', () => {
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) => {
      const changed = files.map((file, number) => ({
        ...file, text: mutations.filter((one) => one.file === number).reduce(mutate, file.text),
      }))
      const { guide, errors, warnings } = compileGuide(changed, { today: TODAY })
      expect(guide === null).toBe(errors.length > 0)
      for (const error of [...errors, ...warnings]) {
        expect(printGuideError(error)).toMatch(/^\S[^\n]*:\d+:\d+ {2}(error|warning) [A-Z_]+\n {2}\S/)
      }
    }), { numRuns: 400 })
  }, 120_000)

  it('keeps its meaning when only comments and blank lines are added', () => {
    const plain = compileGuide(files, { today: TODAY }).guide?.hash
    fc.assert(fc.property(fc.nat(files.length - 1), fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom('', '# a remark'), (number, at, added) => {
      const changed = files.map((file, index) => {
        if (index !== number) return file
        const lines = file.text.split('\n')
        lines.splice(Math.floor(at * lines.length), 0, added)
        return { ...file, text: lines.join('\n') }
      })
      expect(compileGuide(changed, { today: TODAY }).guide?.hash).toBe(plain)
    }))
  })
})
