import { join } from 'node:path'
import express, { type Router } from 'express'

/** The address of each page and its file among the built screens. */
const PAGES: readonly (readonly [address: string | string[], file: string])[] = [
  ['/', 'demo.html'],
  // The link stands after '#', where no server sees it; the second form is for links typed from paper.
  [['/case', '/case/:link'], 'case.html'],
  ['/sheet', 'sheet.html'],
  ['/bench', 'bench.html'],
  ['/sign-in', 'sign-in.html'],
]

/** How long the panel's script may be kept by a browser, in seconds: its address never changes, its content does. */
const PANEL_SECONDS = 300

/** Serves the built screens of a folder. */
export function servePages(webDir: string): Router {
  const router = express.Router()
  for (const [address, file] of PAGES) {
    router.get(address, (_request, response) => {
      response.sendFile(file, { root: webDir, cacheControl: false, headers: { 'cache-control': 'no-cache' } })
    })
  }
  router.get('/panel.js', (_request, response) => {
    // The one file that pages elsewhere load.
    response.sendFile('panel.js', {
      root: webDir, cacheControl: false,
      headers: {
        'cache-control': `public, max-age=${PANEL_SECONDS}`, 'cross-origin-resource-policy': 'cross-origin',
        'access-control-allow-origin': '*',
      },
    })
  })
  // Names under assets carry a hash of their content.
  router.use('/assets', express.static(join(webDir, 'assets'), { index: false, immutable: true, maxAge: '365d' }))
  return router
}
