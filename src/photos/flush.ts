import { open } from 'node:fs/promises'

/**
 * Has the disk take what was written to a file, or which names a folder holds; until then a loss of power may undo it. A
 * new or renamed file needs both: its bytes, and the folder that its name is in.
 */
export async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
