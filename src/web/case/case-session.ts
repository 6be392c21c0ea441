import type { CaseView, OpenCase } from '../../../shared/index.js'
import { newOpeningKey } from '../wire/opening-key.js'
import { MAX_REPEATS, waitBeforeAttempt } from '../wire/backoff.js'
import type { Reply, Trouble } from '../wire/reply.js'
import type { CaseChangeBodies, CaseService } from '../wire/case-service.js'

/** A change to the case as the screens state it; the session adds the revision. */
export type CaseChange = {
  [Path in keyof CaseChangeBodies]: { readonly path: Path; readonly body: Omit<CaseChangeBodies[Path], 'revision'> }
}[keyof CaseChangeBodies]

/** What is on its way, or kept until the network is back. */
export type Errand =
  | { readonly kind: 'open'; readonly body: OpenCase }
  | { readonly kind: 'load'; readonly link: string }
  | { readonly kind: 'change'; readonly link: string; readonly revision: number; readonly change: CaseChange }

export type SessionTrouble =
  | {
    readonly kind: 'lost'
    /** When the next try is due, or null if only the button tries. */
    readonly nextAt: number | null
    /** What the service said of it, if it said anything. */
    readonly detail: string | null
  }
  | { readonly kind: 'stale' }
  /** No case has this link. */
  | { readonly kind: 'gone' }
  | { readonly kind: 'refused'; readonly code: string; readonly detail: string }

export interface SessionState {
  readonly view: CaseView | null
  /** The errand on its way or kept; null when nothing is waiting. */
  readonly errand: Errand | null
  readonly sending: boolean
  readonly trouble: SessionTrouble | null
  /** Grows when an asker's own action brought a new view. The screens move focus only then. */
  readonly ownTurns: number
  /** Red-flag cards that appeared while this screen was open: these, and only these, are announced. */
  readonly newCards: readonly string[]
}

export interface CaseSession {
  readonly state: () => SessionState
  /** Calls back on each new state; returns the function that stops it. */
  watch(onState: (state: SessionState) => void): () => void
  open(body: OpenCase): void
  load(link: string): void
  change(change: CaseChange): void
  /** Tries the kept errand again at once. */
  tryAgain(): void
  /** Drops the kept errand and its message. */
  dismiss(): void
  /** Takes over a state of the case that came by another way, as with a photo. */
  takeOver(view: CaseView): void
  /** Reads the case again quietly, for news from a specialist. */
  lookForNews(): void
  /** Forgets the case: a new question may be asked. */
  reset(): void
  /** Stops requests and timers; `resume` takes up what was kept. */
  pause(): void
  resume(): void
}

/**
 * One case worked from one screen: sends its changes one at a time, keeps what could not be sent and tries again,
 * and follows the service when the case was changed elsewhere.
 */
export function createCaseSession(service: CaseService, onLink: (link: string | null) => void = () => {}): CaseSession {
  let state: SessionState = { view: null, errand: null, sending: false, trouble: null, ownTurns: 0, newCards: [] }
  let repeats = 0
  let paused = false
  let timer: ReturnType<typeof setTimeout> | undefined
  let stop = new AbortController()
  const watchers = new Set<(state: SessionState) => void>()

  function become(next: Partial<SessionState>): void {
    state = { ...state, ...next }
    for (const watcher of watchers) watcher(state)
  }

  function start(errand: Errand): void {
    // A second press while one is on its way is the double click we promised is harmless.
    if (state.sending) return
    repeats = 0
    if (state.trouble !== null) become({ trouble: null })
    void run(errand)
  }

  async function run(errand: Errand): Promise<void> {
    clearTimeout(timer)
    become({ errand, sending: true })
    const { signal } = stop
    const reply = await send(service, errand, signal)
    // After a reset or a pause this reply belongs to nobody.
    if (signal.aborted) return
    if (reply.ok) arrive(reply.value, errand)
    else fail(reply.trouble, errand)
  }

  function arrive(view: CaseView, errand: Errand): void {
    repeats = 0
    const known = new Set(state.view?.cards.map(card => card.id) ?? [])
    const fresh = errand.kind === 'load' ? [] : view.cards.map(card => card.id).filter(id => !known.has(id))
    if (state.view?.link !== view.link) onLink(view.link)
    become({
      view, errand: null, sending: false, trouble: null,
      ownTurns: errand.kind === 'load' ? state.ownTurns : state.ownTurns + 1,
      newCards: [...state.newCards, ...fresh],
    })
  }

  function fail(trouble: Trouble, errand: Errand): void {
    switch (trouble.kind) {
      case 'stopped':
        return
      case 'stale':
        become({ view: trouble.view, errand: null, sending: false, trouble: { kind: 'stale' } })
        return
      case 'refused':
        // A link the service does not know, or would not even read as one, is no use to come back to.
        if (errand.kind === 'load') onLink(null)
        become({
          errand: null, sending: false,
          trouble: errand.kind === 'load' ? { kind: 'gone' } : { kind: 'refused', code: trouble.code, detail: trouble.detail },
        })
        return
      case 'lost':
        keepForLater(errand, trouble.detail)
    }
  }

  function keepForLater(errand: Errand, detail: string | null): void {
    repeats += 1
    const wait = repeats > MAX_REPEATS ? null : waitBeforeAttempt(repeats, Math.random())
    become({ errand, sending: false, trouble: { kind: 'lost', nextAt: wait === null ? null : Date.now() + wait, detail } })
    if (wait !== null) timer = setTimeout(() => void run(errand), wait)
  }

  function tryAgain(): void {
    if (state.errand !== null && !state.sending && !paused) void run(state.errand)
  }

  function halt(): void {
    clearTimeout(timer)
    stop.abort()
    stop = new AbortController()
  }

  return {
    state: () => state,
    watch(onState) {
      watchers.add(onState)
      return () => watchers.delete(onState)
    },
    // A lost reply is asked for again with the same key, so that no second case is opened.
    open: body => start({ kind: 'open', body: { key: newOpeningKey(), ...body } }),
    load: link => start({ kind: 'load', link }),
    change(change) {
      if (state.view !== null) start({ kind: 'change', link: state.view.link, revision: state.view.revision, change })
    },
    tryAgain,
    dismiss() {
      clearTimeout(timer)
      if (!state.sending) become({ errand: null, trouble: null })
    },
    takeOver(view) {
      if (state.view?.link === view.link && view.revision >= state.view.revision) become({ view })
    },
    async lookForNews() {
      if (state.view === null || state.errand !== null || paused) return
      const { signal } = stop
      const reply = await service.caseByLink(state.view.link, signal)
      // Quiet: a failed look is no trouble, and a change under way is newer than this reply.
      if (reply.ok && !signal.aborted && state.errand === null && reply.value.revision >= (state.view?.revision ?? 0)) {
        become({ view: reply.value })
      }
    },
    reset() {
      halt()
      onLink(null)
      become({ view: null, errand: null, sending: false, trouble: null, newCards: [] })
    },
    pause() {
      if (paused) return
      paused = true
      halt()
      if (state.sending) become({ sending: false })
    },
    resume() {
      if (!paused) return
      paused = false
      tryAgain()
    },
  }
}

function send(service: CaseService, errand: Errand, signal: AbortSignal): Promise<Reply<CaseView>> {
  switch (errand.kind) {
    case 'open': return service.openCase(errand.body, signal)
    case 'load': return service.caseByLink(errand.link, signal)
    case 'change': {
      // The two halves of a change belong together; the compiler loses that when the revision is spread in.
      const body = { ...errand.change.body, revision: errand.revision } as CaseChangeBodies[typeof errand.change.path]
      return service.changeCase(errand.link, errand.change.path, body, signal)
    }
  }
}
