import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'

/** A stranger's web page on an origin of its own, with CSS that means no good and a strict content security policy. */
export interface ForeignPage {
  readonly origin: string
  /** Puts this body on the page, and allows scripts and requests to this service only. */
  hold(body: string, serviceUrl: string, attributes?: string): void
  stop(): Promise<void>
}

export async function openForeignPage(): Promise<ForeignPage> {
  let html = ''
  let policy = ''
  const server = createServer((request, response) => {
    if (request.url === '/hostile.css') {
      response.writeHead(200, { 'content-type': 'text/css' }).end(HOSTILE_CSS)
      return
    }
    response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'content-security-policy': policy }).end(html)
  })
  await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as AddressInfo
  return {
    origin: `http://127.0.0.1:${port}`,
    hold(body, serviceUrl, attributes = 'lang="en"') {
      policy = `default-src 'none'; style-src 'self'; script-src ${serviceUrl}; connect-src ${serviceUrl}`
      html = `<!doctype html><html ${attributes}><head><title>A stranger's page</title><link rel="stylesheet" href="/hostile.css">
        <script src="${serviceUrl}/panel.js" defer></script></head><body><main><h1>A stranger's page</h1>${body}</main></body></html>`
    },
    stop: () => new Promise(resolve => { server.close(() => resolve()); server.closeAllConnections() }),
  }
}

const HOSTILE_CSS = `
  html { font-size: 5px; --paper: red; --ink: red; --accent: red; }
  * { color: #ff0 !important; text-transform: uppercase !important; letter-spacing: 9px !important; line-height: 4 !important;
      font: 40px/4 cursive !important; cursor: crosshair !important; text-align: right !important; visibility: visible; --ink: red; --paper: red; }
  button, input, textarea, section, ol, li, h2, h3 { display: none !important; background: #f0f !important; }
`
