import type { CaseView } from '../../../shared/index.js'
import { waitBeforeAttempt } from '../wire/backoff.js'
import type { CaseService } from '../wire/case-service.js'
import { newOpeningKey } from '../wire/opening-key.js'
import { MOST_BYTES } from './photo-limits.js'

/** A photo that is not kept yet. */
export interface Upload {
  readonly key: string
  readonly file: File
  /** How much of it has gone, 0 to 1. */
  readonly share: number
  readonly state: 'sending' | 'waiting' | 'failed' | 'too large'
  /** What the service said against it. */
  readonly said: string | null
}

/** The photos on their way to one case. They go on while other parts of the sheet open and close. */
export interface PhotoUploads {
  readonly uploads: () => readonly Upload[]
  /** Calls back on each change; returns the function that stops it. */
  watch(onChange: () => void): () => void
  add(files: readonly File[]): void
  again(key: string): void
  leaveOut(key: string): void
  /** Gives up on all of them. */
  stop(): void
}

/** Sends photos to the case with this link, each until it is kept, is refused, or was tried too often. `onView` is told the case with each photo. */
export function createPhotoUploads(service: Pick<CaseService, 'addPhoto'>, link: string, onView: (view: CaseView) => void, wait: (ms: number) => Promise<void> = pause): PhotoUploads {
  let all: readonly Upload[] = []
  const stopped = new AbortController()
  const watchers = new Set<() => void>()

  function become(next: readonly Upload[]): void {
    all = next
    for (const watcher of watchers) watcher()
  }
  const change = (key: string, part: Partial<Upload>) => become(all.map(upload => upload.key === key ? { ...upload, ...part } : upload))
  const drop = (key: string) => become(all.filter(upload => upload.key !== key))

  async function send(key: string, file: File): Promise<void> {
    const { signal } = stopped
    for (let attempt = 1; !signal.aborted; attempt++) {
      change(key, { state: 'sending', share: 0, said: null })
      const reply = await service.addPhoto(link, key, file, share => change(key, { share }), signal)
      if (signal.aborted) return
      if (reply.ok) {
        drop(key)
        onView(reply.value.case)
        return
      }
      const { trouble } = reply
      if (trouble.kind !== 'lost' || attempt > MOST_TRIES) {
        change(key, { state: 'failed', said: 'detail' in trouble ? trouble.detail : null })
        return
      }
      change(key, { state: 'waiting', said: trouble.detail })
      await wait(waitBeforeAttempt(attempt, Math.random()))
    }
  }

  return {
    uploads: () => all,
    watch(onChange) {
      watchers.add(onChange)
      return () => watchers.delete(onChange)
    },
    add(files) {
      const fresh = files.map((file): Upload => ({ key: newOpeningKey(), file, share: 0, said: null, state: file.size > MOST_BYTES ? 'too large' : 'sending' }))
      become([...all, ...fresh])
      for (const { key, file, state } of fresh) if (state === 'sending') void send(key, file)
    },
    again(key) {
      const upload = all.find(candidate => candidate.key === key)
      if (upload?.state === 'failed') void send(key, upload.file)
    },
    leaveOut: drop,
    stop() { stopped.abort() },
  }
}

/** What a hand-over has to wait for. */
export interface PhotosOnTheWay {
  /** How many are still being sent or tried again. */
  readonly underWay: number
  /** How many could not be sent. */
  readonly failed: number
  /** How much of those under way has gone, 0 to 1. */
  readonly share: number
}

/** The photos on their way in three numbers. One that is too large was never on its way. */
export function onTheWay(uploads: readonly Upload[]): PhotosOnTheWay {
  const underWay = uploads.filter(({ state }) => state === 'sending' || state === 'waiting')
  return {
    underWay: underWay.length, failed: uploads.filter(({ state }) => state === 'failed').length,
    share: underWay.length === 0 ? 1 : underWay.reduce((sum, { share }) => sum + share, 0) / underWay.length,
  }
}

function pause(ms: number): Promise<void> {
  return new Promise(resolve => setTimeout(resolve, ms))
}

const MOST_TRIES = 4
