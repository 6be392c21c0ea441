import type { Logger } from 'pino'
import type { GuideState } from '../../shared/index.js'
import { type Compiled, type Guide, type GuideKeeping, loadSoundGuide, printGuideError, watchGuideFolder } from '../guide/index.js'

/** The guide while the service runs: it changes when its files do, but only ever to a sound one. */
export interface SoundGuide {
  readonly current: () => Guide
  /** Since when it is in use, and what became of the last change to its files. */
  readonly state: () => GuideState
  stop(): Promise<void>
}

/**
 * Loads the guide of a folder and follows its changes. Throws at the start when the guide has errors; later, a guide
 * with errors, or one that `refuse` gives a reason against, is logged and the one before stays.
 */
export async function followGuide(
  folder: string, keeping: GuideKeeping | null, clock: () => Date, log: Logger, refuse: (guide: Guide) => string | null,
): Promise<SoundGuide> {
  const today = (): string => clock().toISOString().slice(0, 10)
  let current = soundOf(await loadSoundGuide(folder, today(), keeping), refuse)
  let since = clock().toISOString()
  let refused: GuideState['refused'] = null
  const keepBefore = (reason: string): void => { refused = { at: clock().toISOString(), reason } }
  const stop = watchGuideFolder(folder, today, (compiled) => {
    try {
      const next = soundOf(compiled, refuse)
      refused = null
      if (next.hash === current.hash) return
      current = next
      since = clock().toISOString()
      log.info({ guide: next.hash }, 'the guide has changed')
    } catch (fault) {
      const reason = fault instanceof Error ? fault.message : String(fault)
      keepBefore(reason)
      log.warn({ reason }, 'the changed guide is not used')
    }
  }, (fault) => {
    keepBefore('The folder of the guide cannot be read.')
    log.warn({ err: fault }, 'the folder of the guide cannot be read; the guide before is still used')
  })
  return { current: () => current, state: () => ({ guide: current.hash, since, refused }), stop }
}

function soundOf({ guide, errors }: Pick<Compiled, 'guide' | 'errors'>, refuse: (guide: Guide) => string | null): Guide {
  if (guide === null) {
    const many = `${errors.length} ${errors.length === 1 ? 'error' : 'errors'}`
    throw new Error([`The guide has ${many}. Run frondline proof.`, ...errors.map(printGuideError)].join('\n'))
  }
  const reason = refuse(guide)
  if (reason !== null) throw new Error(reason)
  return guide
}
