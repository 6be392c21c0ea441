import { existsSync, statSync } from 'node:fs'
import { type Guide, loadSoundGuide, printGuideError } from '../guide/index.js'
import { guideKeeping } from './built-program.js'
import { notice, today } from './terminal.js'

export const DEFAULT_TREES = 'trees'

/** Ends the command with a plain sentence when a folder is not there. */
export function requireFolder(folder: string): void {
  if (existsSync(folder) && statSync(folder).isDirectory()) return
  notice(`There is no folder "${folder}". Expected the folder that holds the guide, such as trees.`)
  process.exit(1)
}

/** Loads the guide for a command that needs a sound one; otherwise prints its errors and ends with 1. */
export async function requireGuide(folder: string): Promise<Guide> {
  requireFolder(folder)
  const { guide, errors } = await loadSoundGuide(folder, today(), guideKeeping())
  if (guide !== null) return guide
  notice(...errors.map(printGuideError), `The guide in "${folder}" has ${errors.length} ${errors.length === 1 ? 'error' : 'errors'}. Mend them, then run frondline proof.`)
  process.exit(1)
}
