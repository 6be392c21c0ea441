import { watch } from 'chokidar'
import type { Compiled } from './compile.js'
import { loadGuide } from './load.js'

/** Quiet time after the last change before the folder is read again: an editor or a checkout writes many files at once. */
const SETTLE_MS = 300

/**
 * Reads the guide again whenever a file of its folder changes, and tells what came of it.
 * The caller keeps the guide it has unless a new one compiled.
 * @param today gives the ISO date at the time of reading
 * @returns a function that stops watching
 */
export function watchGuideFolder(
  folder: string, today: () => string, onRead: (compiled: Compiled) => void, onFault: (error: unknown) => void,
): () => Promise<void> {
  let timer: NodeJS.Timeout | undefined
  let latest = 0
  const watcher = watch(folder, { ignoreInitial: true, ignored: (path, stats) => stats?.isFile() === true && !/\.ya?ml$/.test(path) })
  watcher.on('all', () => {
    clearTimeout(timer)
    timer = setTimeout(() => {
      latest += 1
      const reading = latest
      // A reading that a later one has overtaken, or that ends after the watch was stopped, is dropped.
      loadGuide(folder, today()).then(
        (compiled) => { if (reading === latest) onRead(compiled) },
        (error: unknown) => { if (reading === latest) onFault(error) },
      )
    }, SETTLE_MS)
  })
  watcher.on('error', onFault)
  return async () => {
    clearTimeout(timer)
    latest += 1
    await watcher.close()
  }
}
