import { createServer, type Server } from 'node:http'
import type { Express } from 'express'

/** An open port. */
export interface OpenPort {
  /** Where the service answers, such as http://127.0.0.1:8420 */
  readonly url: string
  /** Takes no new requests, lets those under way finish, and closes the port. */
  close(): Promise<void>
}

/** How long requests under way may take once the port is closing, in milliseconds. */
const PATIENCE_MS = 10_000
const SWEEP_MS = 50

/** Opens the port; 0 lets the machine choose one. Rejects with a plain sentence when the port cannot be had. */
export async function listen(app: Express, { host, port }: { readonly host: string; readonly port: number }): Promise<OpenPort> {
  const server = createServer(app)
  await new Promise<void>((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => {
      const why = fault.code === 'EADDRINUSE' ? 'another program has it; set FRONDLINE_PORT to another' : fault.message
      reject(new Error(`Port ${port} on ${host} cannot be opened: ${why}.`, { cause: fault }))
    })
    server.listen(port, host, resolve)
  })
  return { url: urlOf(server, host), close: () => closeGently(server) }
}

function urlOf(server: Server, host: string): string {
  const address = server.address()
  const port = typeof address === 'object' && address !== null ? address.port : 0
  return `http://${host.includes(':') ? `[${host}]` : host}:${port}`
}

async function closeGently(server: Server): Promise<void> {
  const closed = new Promise<void>((resolve) => {
    server.close(() => {
      resolve()
    })
  })
  // A connection kept open for more falls idle only once its last answer is out.
  const sweep = setInterval(() => {
    server.closeIdleConnections()
  }, SWEEP_MS)
  const cutOff = setTimeout(() => {
    server.closeAllConnections()
  }, PATIENCE_MS)
  await closed
  clearInterval(sweep)
  clearTimeout(cutOff)
}
