import { useEffect, useRef, useState } from 'preact/hooks'

interface SentWords {
  readonly typed: string
  readonly type: (words: string) => void
  /** Sends what is typed, unless it is blank. */
  readonly send: (onSend: (words: string) => void) => void
}

/** Words in a field that is emptied only once they stand on the sheet: what could not be sent stays to be sent again. */
export function useSentWords(wordsSoFar: number): SentWords {
  const [typed, setTyped] = useState('')
  const sent = useRef<string | null>(null)
  useEffect(() => {
    if (sent.current === null) return
    const arrived = sent.current
    sent.current = null
    setTyped(now => now.trim() === arrived ? '' : now)
  }, [wordsSoFar])
  return {
    typed,
    type: setTyped,
    send(onSend) {
      if (typed.trim() === '') return
      sent.current = typed.trim()
      onSend(typed.trim())
    },
  }
}
