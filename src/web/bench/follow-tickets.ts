/**
 * Tells of every change of a ticket as it happens, by its number; null means that something may have been missed and all
 * is to be looked at again. While the stream of changes is down it asks to look every half minute. Returns how to stop.
 */
export function followTickets(onChange: (ticket: string | null) => void): () => void {
  // The service begins every stream, and so every new one after a break, with a change of anything.
  const source = new EventSource('/api/tickets/events')
  source.addEventListener('change', event => onChange(ticketIn(event.data)))
  const look = () => { if (document.visibilityState === 'visible' && source.readyState !== EventSource.OPEN) onChange(null) }
  const timer = setInterval(look, LOOK_EVERY_MS)
  return () => {
    clearInterval(timer)
    source.close()
  }
}

/** The ticket that an event is about; null when it does not say. */
export function ticketIn(text: unknown): string | null {
  if (typeof text !== 'string') return null
  try {
    const told: unknown = JSON.parse(text)
    const ticket = typeof told === 'object' && told !== null && 'ticket' in told ? told.ticket : null
    return typeof ticket === 'string' || typeof ticket === 'number' ? String(ticket) : null
  } catch {
    return null
  }
}

const LOOK_EVERY_MS = 30_000
