import type { CaseChange } from './case-change.js'
import { keepChanges, keptChanges } from './kept-changes.js'
import type { CaseView, OpenCase } from '../../../shared/index.js'
import { newOpeningKey } from '../wire/opening-key.js'
import { MAX_REPEATS, waitBeforeAttempt } from '../wire/backoff.js'
import type { Reply, Trouble } from '../wire/reply.js'
import type { CaseChangeBodies, CaseService } from '../wire/case-service.js'

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
  /** Changes that wait behind it, first one first: each is sent on the revision that the one before it brings. */
  readonly queue: readonly CaseChange[]
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
 * One case worked from one screen: sends its changes one at a time, keeps what could not be sent and tries again, lets what
 * is answered meanwhile wait behind it, and follows the service when the case was changed elsewhere.
 */
export function createCaseSession(service: CaseService, onLink: (link: string | null) => void = () => {}): CaseSession {
  let state: SessionState = { view: null, errand: null, queue: [], sending: false, trouble: null, ownTurns: 0, newCards: [] }
  /** What the queue's changes found on the line they change; beside `state.queue`, place by place. */
  let found: readonly (string | null)[] = []
  let repeats = 0
  let paused = false
  /** True while a change that has waited in the queue is on its way. */
  let replaying = false
  let timer: ReturnType<typeof setTimeout> | undefined
  let stop = new AbortController()
  const watchers = new Set<(state: SessionState) => void>()

  function become(next: Partial<SessionState>): void {
    state = { ...state, ...next }
    if ('errand' in next || 'queue' in next) keepWaiting()
    for (const watcher of watchers) watcher(state)
  }

  /** So that a page that is loaded anew goes on where this one was. */
  function keepWaiting(): void {
    const { view, errand, queue } = state
    if (view === null) return
    const first = errand?.kind === 'change' ? [errand.change] : []
    keepChanges(view.link, [
      ...first.map(change => ({ change, before: change.path === 'answers' ? answerIn(view, change.body.check) : null })),
      ...queue.map((change, place) => ({ change, before: found[place] ?? null })),
    ])
  }

  function start(errand: Errand): void {
    // A second press while one is on its way is the double click we promised is harmless.
    if (state.sending) return
    repeats = 0
    replaying = false
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
    const isReplay = replaying
    replaying = false
    const kept = errand.kind === 'load' && state.errand?.kind === 'load' ? keptChanges(view.link).filter(({ change }) => !isThere(view, change)) : []
    // What waits belongs to its own case.
    const isSame = state.view?.link === view.link
    if (kept.length > 0 || !isSame) found = kept.map(({ before }) => before)
    const known = new Set(state.view?.cards.map(card => card.id) ?? [])
    const fresh = errand.kind === 'load' ? [] : view.cards.map(card => card.id).filter(id => !known.has(id))
    if (state.view?.link !== view.link) onLink(view.link)
    become({
      view, errand: null, sending: false, ...(kept.length === 0 && isSame ? {} : { queue: kept.map(({ change }) => change) }),
      // What was said of an earlier change stays while those behind it go out.
      trouble: isReplay && state.trouble !== null && state.trouble.kind !== 'lost' ? state.trouble : null,
      // Another language is the same sheet: nobody is taken elsewhere on it.
      ownTurns: errand.kind === 'load' || (errand.kind === 'change' && errand.change.path === 'language') ? state.ownTurns : state.ownTurns + 1,
      newCards: [...state.newCards, ...fresh],
    })
    sendNext()
  }

  /** Sends the change that waits longest, on the revision that the case has now. */
  function sendNext(): void {
    const { view, queue } = state
    const [next, ...rest] = queue
    if (next === undefined || view === null || state.errand !== null || paused) return
    const [before = null] = found
    found = found.slice(1)
    become({ queue: rest })
    if (next.path === 'answers' && answerIn(view, next.body.check) !== before) {
      // Somebody else has written on this line since: their answer is not written over unseen.
      become({ trouble: { kind: 'stale' } })
      sendNext()
      return
    }
    repeats = 0
    replaying = true
    void run({ kind: 'change', link: view.link, revision: view.revision, change: next })
  }

  /** Lets a change wait behind the one that cannot be sent just now. The same press twice is one change. */
  function sendLater(change: CaseChange): void {
    const { view, errand, queue } = state
    const waiting = [...(errand?.kind === 'change' ? [errand.change] : []), ...queue]
    const last = waiting.at(-1)
    if (view === null || (last !== undefined && JSON.stringify(last) === JSON.stringify(change))) return
    const check = change.path === 'answers' ? change.body.check : null
    const earlier = waiting.findLast(other => other.path === 'answers' && other.body.check === check)
    found = [...found, check === null ? null : earlier?.path === 'answers' ? earlier.body.answer : answerIn(view, check)]
    become({ queue: [...queue, change] })
  }

  function fail(trouble: Trouble, errand: Errand): void {
    if (trouble.kind === 'stale' || trouble.kind === 'refused') replaying = false
    switch (trouble.kind) {
      case 'stopped':
        return
      case 'stale':
        if (errand.kind === 'change' && repeats > 0 && state.view !== null && stillFits(errand.change, state.view, trouble.view)) {
          // It was kept while others went on: it goes out on the sheet as it stands now, before what waits behind it.
          found = [errand.change.path === 'answers' ? answerIn(trouble.view, errand.change.body.check) : null, ...found]
          become({ view: trouble.view, errand: null, queue: [errand.change, ...state.queue], sending: false, trouble: null })
          sendNext()
          return
        }
        become({ view: trouble.view, errand: null, sending: false, trouble: { kind: 'stale' } })
        sendNext()
        return
      case 'refused':
        // A link the service does not know, or would not even read as one, is no use to come back to.
        if (errand.kind === 'load') onLink(null)
        become({
          errand: null, sending: false,
          trouble: errand.kind === 'load' ? { kind: 'gone' } : { kind: 'refused', code: trouble.code, detail: trouble.detail },
        })
        sendNext()
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
      if (state.view === null) return
      // Something is kept already: this waits its turn. While a first try is on its way a press is a double click.
      if (state.errand !== null && (repeats > 0 || replaying)) sendLater(change)
      else start({ kind: 'change', link: state.view.link, revision: state.view.revision, change })
    },
    tryAgain,
    dismiss() {
      clearTimeout(timer)
      if (state.sending) return
      become({ errand: null, trouble: null })
      sendNext()
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
      repeats = 0
      replaying = false
      found = []
      become({ view: null, errand: null, queue: [], sending: false, trouble: null, newCards: [] })
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
      sendNext()
    },
  }
}

/** Whether a change has reached the sheet already: its reply may have been lost with the page. */
function isThere(view: CaseView, change: CaseChange): boolean {
  switch (change.path) {
    case 'answers': return answerIn(view, change.body.check) === change.body.answer
    case 'words': return view.words.includes(change.body.words)
    case 'notes': return view.notes.some(note => note.text === change.body.text)
    case 'place': return view.place.host?.host === change.body.host
    case 'carry-on': return view.carriedOn
    case 'language': return view.language === change.body.language
    case 'take-back': return answerIn(view, change.body.check) === null
    case 'hand-over': return view.ticket !== null
  }
}

/** Whether a change means the same on a sheet that others have changed since: words are only added, and an answer may be written where nobody else has. */
function stillFits(change: CaseChange, before: CaseView, now: CaseView): boolean {
  switch (change.path) {
    case 'words': case 'notes': case 'hand-over': case 'language': return true
    case 'answers': return answerIn(before, change.body.check) === answerIn(now, change.body.check)
    case 'place': case 'take-back': case 'carry-on': return false
  }
}

/** The answer that a check has on the sheet, or null. */
function answerIn(view: CaseView, check: string): string | null {
  return view.lines.find(line => line.check.id === check)?.answer ?? null
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
