import { notice } from './terminal.js'

/** Does a command's work. A fault is said in its own sentence, without the way through the program, and ends it with 1. */
export async function plainly(work: () => Promise<void>): Promise<void> {
  try {
    await work()
  } catch (fault) {
    notice(fault instanceof Error ? fault.message : String(fault))
    process.exitCode = 1
  }
}
