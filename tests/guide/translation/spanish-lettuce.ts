/** The lettuce world of the guide tests with Spanish beside it. */
import { compileGuide, type Compiled, refreshFiles, type SourceFile } from '../../../src/guide/index.js'
import { lettuceFiles, TODAY } from '../lettuce-world.js'

/** A check translated whole but for its marks, which `frondline translate --checked` writes. */
export const SPANISH_CHECK = `check: leaf-top
complete: yes
ask: ¿Cómo son las marcas por arriba?
how: Mire tres hojas.
why: El borde dice mucho.
answers:
  pale patches: { shown: manchas pálidas, said as: [manchas palidas] }
  ragged holes: { shown: agujeros rotos }
  brown edges: { shown: bordes marrones }
`

/** The lettuce files with one or more translations; those are marked as made from the English of `lettuceFiles()`. */
export function spanishFiles(translations: Readonly<Record<string, string>>, changes: Parameters<typeof lettuceFiles>[0] = {}): SourceFile[] {
  const written = Object.entries(translations).map(([path, text]) => ({ path: `trees/${path}`, text }))
  const marked = written.map((file) => {
    const name = file.path.replace(/^trees\//, '').replace(/\.es\.yaml$/, '')
    const made = refreshFiles([...lettuceFiles(), file], 'es', name, { checked: true })
    return 'files' in made ? { path: file.path, text: made.files[0]?.text ?? file.text } : file
  })
  return [...lettuceFiles(changes), ...marked]
}

/** Compiles the lettuce world with translations beside it. */
export function compileSpanish(translations: Readonly<Record<string, string>>, changes: Parameters<typeof lettuceFiles>[0] = {}): Compiled {
  return compileGuide(spanishFiles(translations, changes), { today: TODAY })
}
