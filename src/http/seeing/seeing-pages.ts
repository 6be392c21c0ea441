import express, { type Request, type Router } from 'express'
import { z } from 'zod'
import { SeeingList, Week } from '../../../shared/index.js'
import type { Desk } from '../../desk/index.js'
import { renderSeeing } from '../../web/plain/index.js'
import { builtPage } from '../built-page.js'
import { safeHeaders } from '../safe-headers.js'
import { atomFeed } from './atom.js'

/** The addresses of what we are seeing; there is nothing private in any. */
export const seeingAddresses = ['/seeing', '/seeing/inside', '/seeing.atom', '/seeing.json', '/seeing.schema.json'] as const

/** So long a copy may be shown without asking again, in seconds: what was taken back must be gone soon. */
const FRESH_SECONDS = 60

export interface SeeingParts {
  readonly desk: Pick<Desk, 'publicNotes'>
  readonly webDir: string
  /** Pages elsewhere that may show the note inside them. */
  readonly panelOrigins: readonly string[]
  readonly behindHttps: boolean
}

/** 'What we are seeing' for everyone: a page without script, the same to be shown inside pages elsewhere, a feed, and JSON. */
export function seeingPages({ desk, webDir, panelOrigins, behindHttps }: SeeingParts): Router {
  const router = express.Router()
  const frame = builtPage(webDir, 'seeing.html')
  const cached = { 'cache-control': `public, max-age=${FRESH_SECONDS}` }
  const forEveryone = { ...cached, 'access-control-allow-origin': '*', 'cross-origin-resource-policy': 'cross-origin' }
  const weekIn = (request: Request): string | null => {
    const { week } = request.query
    return week === undefined ? null : Week.safeParse(week).data ?? ''
  }

  router.get('/seeing', async (request, response) => {
    const list = await desk.publicNotes()
    const week = weekIn(request)
    const isKnown = week === null || list.notes.some((note) => note.week === week)
    response.status(isKnown ? 200 : 404).set(cached).type('html').send(await frame(renderSeeing({ list, week, inside: false })))
  })
  // The one page of ours that pages elsewhere may show: it holds nothing to press that changes anything.
  router.get('/seeing/inside', safeHeaders(behindHttps, panelOrigins), async (_request, response) => {
    const page = await frame(renderSeeing({ list: await desk.publicNotes(), week: null, inside: true }))
    // Helmet sets what it is told and takes nothing back that every page of ours was given before.
    response.removeHeader('x-frame-options')
    response.set({ ...cached, 'cross-origin-resource-policy': 'cross-origin' }).type('html').send(page)
  })
  router.get('/seeing.atom', async (request, response) => {
    response.set(forEveryone).type('application/atom+xml').send(atomFeed(await desk.publicNotes(), seenAt(request)))
  })
  router.get('/seeing.json', async (_request, response) => {
    response.set(forEveryone).json(await desk.publicNotes())
  })
  router.get('/seeing.schema.json', (_request, response) => {
    response.set(forEveryone).type('application/schema+json').send(JSON.stringify(z.toJSONSchema(SeeingList, { target: 'draft-2020-12' }), null, 2))
  })
  return router
}

/** Where the asker sees the service, by the request's own host. One that is no address gets this machine's name: the feed stays whole. */
function seenAt(request: Request): string {
  const address = `${request.protocol}://${request.get('host') ?? ''}`
  return URL.canParse(address) ? new URL(address).origin : 'http://localhost'
}
