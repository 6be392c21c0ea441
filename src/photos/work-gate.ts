import { PhotoFault } from './photo-fault.js'

/** Lets a few pieces of work go on at once; some more wait in line, and the rest are turned away. */
export interface WorkGate {
  /** Does the work when its turn comes. Throws the PhotoFault 'busy' at once when the line is full. */
  pass<Result>(work: () => Promise<Result>): Promise<Result>
}

/** Opens a gate for `most` at once and `waiting` in line. */
export function openGate(most: number, waiting: number): WorkGate {
  let inside = 0
  const line: (() => void)[] = []
  const enter = async (): Promise<void> => {
    if (inside < most) {
      inside++
      return
    }
    if (line.length >= waiting) throw new PhotoFault('busy')
    // Whoever leaves hands their place on, so the count stays.
    await new Promise<void>((resolve) => line.push(resolve))
  }
  const leave = (): void => {
    const next = line.shift()
    if (next === undefined) inside--
    else next()
  }
  return {
    async pass(work) {
      await enter()
      try {
        return await work()
      } finally {
        leave()
      }
    },
  }
}
