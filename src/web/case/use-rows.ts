import { useEffect, useState } from 'preact/hooks'
import type { Reply } from '../wire/reply.js'

export type Rows<Value> =
  | { readonly kind: 'fetching' }
  | { readonly kind: 'here'; readonly value: Value }
  | { readonly kind: 'failed'; readonly again: () => void }

/** A list fetched when `key` changes; null as the key fetches nothing. The request stops when the part leaves the screen. */
export function useRows<Value>(key: string | null, fetchRows: (key: string, signal: AbortSignal) => Promise<Reply<Value>>): Rows<Value> {
  const [round, setRound] = useState(0)
  const [rows, setRows] = useState<Rows<Value>>({ kind: 'fetching' })
  useEffect(() => {
    if (key === null) return
    const stop = new AbortController()
    setRows({ kind: 'fetching' })
    void fetchRows(key, stop.signal).then(reply => {
      if (stop.signal.aborted) return
      setRows(reply.ok ? { kind: 'here', value: reply.value } : { kind: 'failed', again: () => setRound(round + 1) })
    })
    return () => stop.abort()
  }, [key, round])
  return rows
}
