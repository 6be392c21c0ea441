import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { GuideKeeping } from '../guide/index.js'

const program = fileURLToPath(import.meta.url)

/** Folder of the built screens: it stands beside the built program, in dist/. */
export const builtScreens = join(dirname(program), 'web')

/** Compiled guides are kept beside the built program; null when the program runs from its sources, which change under it. */
export function guideKeeping(): GuideKeeping | null {
  if (basename(program) !== 'frondline.js') return null
  return { folder: join(dirname(program), 'guides'), program: createHash('sha256').update(readFileSync(program)).digest('hex') }
}
