/** How long a weather service may take for a whole file, and how large the file may be. Ten years of hours are some 4 MB. */
export interface FetchLimits {
  readonly timeoutMs: number
  readonly mostBytes: number
}

export const usualFetchLimits: FetchLimits = { timeoutMs: 30_000, mostBytes: 20_000_000 }

/**
 * Fetches a file from a weather service.
 * @throws Error that says in plain words what went wrong; it names no address, which may hold a secret
 */
export async function fetchWeather(address: string, { timeoutMs, mostBytes }: FetchLimits = usualFetchLimits): Promise<readonly Uint8Array[]> {
  const signal = AbortSignal.timeout(timeoutMs)
  try {
    // A redirection could lead to a place without HTTPS, or into our own network.
    const reply = await fetch(address, { signal, redirect: 'manual', headers: { accept: 'text/csv' } })
    if (reply.status !== 200 || reply.body === null) {
      await reply.body?.cancel()
      throw new FetchFault(reply.status >= 300 && reply.status < 400
        ? `The weather service answered ${reply.status} and points elsewhere. Set the address it points to.`
        : `The weather service answered ${reply.status}. Expected 200 with a CSV file.`)
    }
    const pieces: Uint8Array[] = []
    let size = 0
    for await (const piece of reply.body as unknown as AsyncIterable<Uint8Array>) {
      size += piece.byteLength
      if (size > mostBytes) throw new FetchFault(`The file of the weather service is larger than ${mostBytes} bytes. Ask it for fewer days.`)
      pieces.push(piece)
    }
    return pieces
  } catch (fault) {
    if (fault instanceof FetchFault) throw fault
    if (signal.aborted) throw new FetchFault(`The weather service did not answer in full within ${timeoutMs / 1000} seconds.`)
    throw new FetchFault(`The weather service could not be reached (${causeOf(fault)}).`)
  }
}

class FetchFault extends Error {}

/** The error's code alone: its words may repeat the address. */
function causeOf(fault: unknown): string {
  const { cause } = fault as { cause?: { code?: unknown } }
  return typeof cause?.code === 'string' ? cause.code : 'no reason given'
}
