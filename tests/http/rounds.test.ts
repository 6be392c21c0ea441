import { pino } from 'pino'
import { describe, expect, it } from 'vitest'
import { keepDoing } from '../../src/http/rounds.js'

const quiet = pino({ level: 'silent' })
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

describe('rounds of work', () => {
  it('are done one after the other, with the wait that each asks for', async () => {
    let under = 0
    let most = 0
    let count = 0
    const rounds = keepDoing('x', async () => {
      most = Math.max(most, ++under)
      await pause(5)
      under--
      count++
      return 1
    }, quiet)
    await expect.poll(() => count).toBeGreaterThan(3)
    await rounds.stop()
    expect(most).toBe(1)
  })

  it('go on after one that fails, and the fault is logged', async () => {
    const logged: string[] = []
    let count = 0
    const rounds = keepDoing('letters', async () => {
      if (++count === 1) throw new Error('no store')
      return 1
    }, pino({}, { write: (line: string) => void logged.push(line) }), 1)
    await expect.poll(() => count).toBeGreaterThan(2)
    await rounds.stop()
    expect(logged.join('')).toMatch(/"round":"letters".*a round of work failed/)
  })

  it('end when they are stopped: the one under way is told and comes to its end, and no other begins', async () => {
    let ended = 0
    const rounds = keepDoing('x', async (stopped) => {
      while (!stopped()) await pause(2)
      ended++
      return 0
    }, quiet)
    await pause(20)
    await rounds.stop()
    expect(ended).toBe(1)
  })

  it('do not wait out a long pause when they are stopped', async () => {
    const rounds = keepDoing('x', async () => 3_600_000, quiet)
    await pause(20)
    const started = performance.now()
    await rounds.stop()
    expect(performance.now() - started).toBeLessThan(1000)
  })
})
