import type { CaseView, ProblemDocument } from '../../../shared/index.js'

/** Why a request brought no value. */
export type Trouble =
  /** No reply, or the service is down or too busy: worth trying again as it is. */
  | { readonly kind: 'lost'; /** What the service itself said, when it answered that it is asked too often. */ readonly detail: string | null }
  /** Somebody changed the case since; `view` is the case as it stands now. */
  | { readonly kind: 'stale'; readonly view: CaseView }
  /** The service understood and said no. */
  | { readonly kind: 'refused'; readonly status: number; readonly code: string; readonly detail: string }
  /** The screen gave up on the request itself. */
  | { readonly kind: 'stopped' }

export type Reply<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly trouble: Trouble }

/** Reads a reply of the service. Bodies of the service's own replies are trusted to match their types in `shared`. */
export async function readReply<Value>(response: Response): Promise<Reply<Value>> {
  if (response.ok) {
    if (response.status === 204) return { ok: true, value: undefined as Value }
    return { ok: true, value: await response.json() as Value }
  }
  if (response.status >= 500 || response.status === 408) return { ok: false, trouble: { kind: 'lost', detail: null } }
  const document = await readProblemDocument(response)
  if (response.status === 429) return { ok: false, trouble: { kind: 'lost', detail: document?.detail ?? null } }
  if (document?.case !== undefined && response.status === 409) {
    return { ok: false, trouble: { kind: 'stale', view: document.case } }
  }
  return {
    ok: false,
    trouble: {
      kind: 'refused', status: response.status,
      code: document?.code ?? 'UNKNOWN', detail: document?.detail ?? response.statusText,
    },
  }
}

/** A proxy in between may answer with a page of its own, so a body that does not read is not an error here. */
async function readProblemDocument(response: Response): Promise<Partial<ProblemDocument> | null> {
  try {
    const body: unknown = await response.json()
    return typeof body === 'object' && body !== null ? body : null
  } catch {
    return null
  }
}
