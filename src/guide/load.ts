import { compileGuide, type Compiled } from './compile.js'
import { readFolder } from './read-folder.js'

/**
 * Reads and compiles the guide in a folder.
 * @param folder the trees folder
 * @param today ISO date, for the age of reviews
 * @throws the file system's own error when the folder cannot be read
 */
export async function loadGuide(folder: string, today: string): Promise<Compiled> {
  return compileGuide(await readFolder(folder), { today })
}
