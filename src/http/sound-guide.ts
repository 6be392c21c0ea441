import type { Logger } from 'pino'
import { type Compiled, type Guide, loadGuide, printGuideError, watchGuideFolder } from '../guide/index.js'

/** The guide while the service runs: it changes when its files do, but only ever to a sound one. */
export interface SoundGuide {
  readonly current: () => Guide
  stop(): Promise<void>
}

/**
 * Loads the guide of a folder and follows its changes. Throws at the start when the guide has errors; later, a guide
 * with errors, or one that `refuse` gives a reason against, is logged and the one before stays.
 */
export async function followGuide(
  folder: string, clock: () => Date, log: Logger, refuse: (guide: Guide) => string | null,
): Promise<SoundGuide> {
  const today = (): string => clock().toISOString().slice(0, 10)
  let current = soundOf(await loadGuide(folder, today()), refuse)
  const stop = watchGuideFolder(folder, today, (compiled) => {
    try {
      const next = soundOf(compiled, refuse)
      if (next.hash === current.hash) return
      current = next
      log.info({ guide: next.hash }, 'the guide has changed')
    } catch (fault) {
      log.warn({ reason: fault instanceof Error ? fault.message : String(fault) }, 'the changed guide is not used')
    }
  }, (fault) => {
    log.warn({ err: fault }, 'the folder of the guide cannot be read; the guide before is still used')
  })
  return { current: () => current, stop }
}

function soundOf({ guide, errors }: Compiled, refuse: (guide: Guide) => string | null): Guide {
  if (guide === null) {
    const many = `${errors.length} ${errors.length === 1 ? 'error' : 'errors'}`
    throw new Error([`The guide has ${many}. Run frondline proof.`, ...errors.map(printGuideError)].join('\n'))
  }
  const reason = refuse(guide)
  if (reason !== null) throw new Error(reason)
  return guide
}
