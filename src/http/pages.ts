import { join } from 'node:path'
import express, { type Router } from 'express'

/** The address of each page and its file among the built screens. */
const PAGES: readonly (readonly [address: string | string[], file: string])[] = [
  ['/', 'demo.html'],
  // The link stands after '#', where no server sees it; the second form is for links typed from paper.
  [['/case', '/case/:link'], 'case.html'],
  ['/sheet', 'sheet.html'],
  ['/bench', 'bench.html'],
  ['/season', 'season.html'],
  ['/sign-in', 'sign-in.html'],
  ['/people', 'people.html'],
  ['/account', 'account.html'],
  // An invitation's token stands after '#'.
  ['/join', 'join.html'],
]

/** Every address of a page or of the files that pages load, as Express writes it. */
export const pageAddresses: readonly string[] = [...PAGES.flatMap(([address]) => address), '/panel.js', '/panel', '/assets']

/** Headers of the files that pages elsewhere load: the panel's script and its modules. */
const FOR_OTHER_PAGES = { 'cross-origin-resource-policy': 'cross-origin', 'access-control-allow-origin': '*' }

/** Serves the built screens of a folder. */
export function servePages(webDir: string): Router {
  const router = express.Router()
  for (const [address, file] of PAGES) {
    router.get(address, (_request, response) => {
      response.sendFile(file, { root: webDir, cacheControl: false, headers: { 'cache-control': 'no-cache' } })
    })
  }
  router.get('/panel.js', (_request, response) => {
    // Its address never changes and it names the modules of today: an old one would name modules that are gone.
    response.sendFile('panel.js', { root: webDir, cacheControl: false, headers: { 'cache-control': 'no-cache', ...FOR_OTHER_PAGES } })
  })
  router.use('/panel', express.static(join(webDir, 'panel'), {
    index: false, redirect: false, immutable: true, maxAge: '365d', setHeaders: (response) => { response.set(FOR_OTHER_PAGES) },
  }))
  // Names under panel and assets carry a hash of their content.
  router.use('/assets', express.static(join(webDir, 'assets'), { index: false, immutable: true, maxAge: '365d' }))
  return router
}
