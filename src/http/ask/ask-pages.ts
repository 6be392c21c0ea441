import { randomBytes } from 'node:crypto'
import express, { type ErrorRequestHandler, type Request, type RequestHandler, type Response, type Router } from 'express'
import { z } from 'zod'
import {
  AddWords, AnswerCheck, CarryOn, CaseLink, type CaseView, ChangeLanguage, type CheckCard, Contact, givenContact, HandOver, Language, OpenCase, PhotoNumber,
  SettlePlace, UploadKey,
} from '../../../shared/index.js'
import { type Desk, DeskFault } from '../../desk/index.js'
import { NOW, plainAddress, type PlainAside, type PlainFault, type PlainFaultName, plainFaults } from '../../web/plain/index.js'
import type { FileReader } from '../file-body.js'
import { fitting } from '../fitting.js'
import { requestId } from '../last-error.js'
import type { LimitName } from '../limits.js'
import { pageOrigin } from '../page-origin.js'
import { refusalFor } from '../problem-documents.js'
import { RequestFault } from '../request-fault.js'
import { requestLanguage } from '../request-language.js'
import { fieldsOf, fileOf, readForm, revisionOf } from './form-fields.js'
import { pageFrame } from './page-frame.js'

/** The addresses of plain pages that hold nothing of a case. */
export const openAskAddresses = ['/ask', '/ask/find'] as const

/** What the plain pages are made of. */
export interface AskParts {
  readonly desk: Desk
  readonly webDir: string
  readonly limits: Readonly<Record<LimitName, RequestHandler>>
  /** Reads forms that carry a photo. */
  readonly files: FileReader
}

/** What besides the step a page may show. */
const Wanted = z.object({
  look: z.string().max(80).optional().catch(undefined), plant: z.string().max(80).optional().catch(undefined), specialist: z.string().optional().catch(undefined),
})

type Fields = Readonly<Record<string, string>>

/**
 * The panel as plain pages, for people whose browser runs no script: forms that are sent, pages that are drawn here, and
 * the same calls of the desk as the routes under /api. No cookie is set or read, so a session is of no use to a page
 * elsewhere that sends one of these forms; one that says where it is from is refused all the same. The link in the
 * address is the key to the case, as it is everywhere, and is never logged.
 */
export function askPages({ desk, webDir, limits, files }: AskParts): Router {
  const router = express.Router()
  const frame = pageFrame(webDir)
  const ownPagesOnly: RequestHandler = (request, _response, next) => {
    if (pageOrigin(request) === 'other') throw new RequestFault('OTHER_ORIGIN')
    next()
  }
  const form = [ownPagesOnly, readForm()]

  async function sendOpening(request: Request, response: Response, status: number, { typed = {}, fault = null, gone = false }: { typed?: Fields, fault?: PlainFault | null, gone?: boolean } = {}): Promise<void> {
    const language = wantedLanguage(request)
    await frame.send(response, status, { kind: 'opening', language, region: desk.region(language), openingKey: freshKey(), typed, fault, gone })
  }

  async function sendCase(request: Request, response: Response, status: number, view: CaseView, { aside = null, typed = {}, fault = null }: { aside?: PlainAside | null, typed?: Fields, fault?: PlainFault | null } = {}): Promise<void> {
    const address = `${request.protocol}://${request.get('host') ?? ''}${plainAddress(view.link)}`
    const { hosts, untranslated = [] } = desk.hosts(view.language)
    const complaints = aside?.kind === 'complaints' ? desk.complaints(aside.host, view.language).untranslated ?? [] : []
    await frame.send(response, status, { kind: 'case', region: desk.region(view.language), view, aside, address, hosts, untranslated: [...untranslated, ...complaints], uploadKey: freshKey(), typed, fault })
  }

  /** On to the sheet as it stands now, at the step it is at; at its top where a card is to be read first. */
  function goTo(response: Response, view: CaseView): void {
    response.set('cache-control', 'no-store').redirect(303, `${plainAddress(view.link)}${view.cards.length > 0 ? '' : `#${NOW}`}`)
  }

  router.get('/ask', (request, response) => sendOpening(request, response, 200))

  router.post('/ask', ...form, limits['open case'], async (request, response) => {
    const { words = '', district = '', key = '' } = fieldsOf(request)
    const fits = OpenCase.safeParse({ words, key, language: wantedLanguage(request), ...(district === '' ? {} : { district }) })
    if (!fits.success) {
      await sendOpening(request, response, 422, { typed: fieldsOf(request), fault: { field: 'words', words: plainFaults(wantedLanguage(request))[words.trim() === '' ? 'no question' : 'long question'] } })
      return
    }
    goTo(response, await desk.openCase(fits.data, null))
  })

  // A link is pasted whole or in part; it goes by a form, so that it stands in no address of a question.
  router.post('/ask/find', ...form, async (request, response) => {
    const { link = '' } = fieldsOf(request)
    const [found] = /[A-Za-z0-9_-]{32}$/.exec(link.trim()) ?? []
    if (found === undefined) await sendOpening(request, response, 422, { typed: { link }, fault: { field: 'link', words: plainFaults(wantedLanguage(request))['bad link'] } })
    else response.set('cache-control', 'no-store').redirect(303, plainAddress(found))
  })

  router.get('/ask/:link', async (request, response) => {
    const view = await desk.showCase(linkOf(request), null)
    const wanted = Wanted.parse(request.query)
    await sendCase(request, response, 200, view, { aside: asideFor(desk, view, wanted) })
  })

  const change = (path: string, make: (link: string, fields: Fields) => Promise<CaseView>) => {
    router.post(`/ask/:link/${path}`, ...form, limits['change case'], async (request, response) => {
      goTo(response, await make(linkOf(request), fieldsOf(request)))
    })
  }
  change('place', (link, fields) => desk.settlePlace(link, fitting(SettlePlace, { revision: revisionOf(fields), host: fields['host'], node: fields['node'] || null }, 'BODY_DOES_NOT_FIT'), null))
  change('answers', (link, fields) => desk.answerCheck(link, fitting(AnswerCheck, { revision: revisionOf(fields), check: fields['check'], answer: fields['answer'] }, 'BODY_DOES_NOT_FIT'), null))
  change('language', (link, fields) => desk.changeLanguage(link, fitting(ChangeLanguage, { revision: revisionOf(fields), language: fields['language'] }, 'BODY_DOES_NOT_FIT'), null))
  change('carry-on', (link, fields) => desk.carryOn(link, fitting(CarryOn, { revision: revisionOf(fields) }, 'BODY_DOES_NOT_FIT'), null))

  router.post('/ask/:link/words', ...form, limits['change case'], async (request, response) => {
    const link = linkOf(request)
    const fields = fieldsOf(request)
    if ((fields['words'] ?? '').trim() === '') {
      const view = await desk.showCase(link, null)
      await sendCase(request, response, 422, view, { fault: { field: 'words', words: plainFaults(view.language)['no words'] } })
      return
    }
    goTo(response, await desk.addWords(link, fitting(AddWords, { revision: revisionOf(fields), words: fields['words'] }, 'BODY_DOES_NOT_FIT'), null))
  })

  router.post('/ask/:link/hand-over', ...form, limits['change case'], async (request, response) => {
    const link = linkOf(request)
    const fields = fieldsOf(request)
    const contact = givenContact(fields)
    const fault = contactFault(contact)
    if (fault !== null) {
      const view = await desk.showCase(link, null)
      await sendCase(request, response, 422, view, { typed: fields, fault: { field: fault.field, words: plainFaults(view.language)[fault.name] }, aside: view.step.kind === 'hand-over' ? null : { kind: 'specialist' } })
      return
    }
    const note = (fields['note'] ?? '').trim()
    const body = { revision: revisionOf(fields), ...(contact === null ? {} : { contact }), ...(note === '' ? {} : { note }) }
    goTo(response, await desk.handOver(link, fitting(HandOver, body, 'BODY_DOES_NOT_FIT'), null))
  })

  router.post('/ask/:link/photos/:upload', ownPagesOnly, limits['send photo'], async (request, response) => {
    const link = linkOf(request)
    const upload = UploadKey.safeParse(request.params['upload'])
    if (!upload.success) throw new RequestFault('UPLOAD_KEY_DOES_NOT_FIT')
    const { case: view } = await desk.addPhoto(link, upload.data, async () => {
      const file = await fileOf(request, await files.read(request), 'photo')
      if (file === null) throw new NoPhoto()
      return file
    }, null)
    response.set('cache-control', 'no-store').redirect(303, photosAddress(view))
  })

  router.post('/ask/:link/photos/:photo/remove', ownPagesOnly, limits['change case'], async (request, response) => {
    const photo = PhotoNumber.safeParse(request.params['photo'])
    if (!photo.success) throw new RequestFault('NO_SUCH_PLACE')
    response.set('cache-control', 'no-store').redirect(303, photosAddress(await desk.removePhoto(linkOf(request), photo.data, null)))
  })

  // Someone who sends the address of a form again, as from the browser's list of pages, is shown the sheet.
  router.get(['/ask/:link/:change', '/ask/:link/photos/:photo', '/ask/:link/photos/:photo/remove'], (request, response) => {
    response.redirect(303, plainAddress(linkOf(request)))
  })

  router.use('/ask', answerInWords())
  return router

  /** Says what was refused on a page of the same kind, with what was typed still in its field. */
  function answerInWords(): ErrorRequestHandler {
    return async (thrown: unknown, request, response, next) => {
      const refusal = (language: Language) => refusalFor(thrown instanceof NoPhoto ? new RequestFault('BAD_REQUEST') : thrown, requestId(request), language)
      const { document, headers } = refusal(wantedLanguage(request))
      if (response.headersSent) {
        next(thrown)
        return
      }
      // A client's fault is in the request line of the log; its error may quote what was sent, so it is not logged.
      if (document.status >= 500) request.log.error({ err: thrown }, 'a request failed')
      response.set(headers)
      const link = CaseLink.safeParse(/^\/ask\/([^/?]+)/.exec(request.originalUrl)?.[1])
      const isPhoto = /\/photos\//.test(request.originalUrl)
      const typed = safeFields(request)
      const words = (language: Language) => {
        const faults = plainFaults(language)
        return thrown instanceof NoPhoto ? faults['no photo'] : document.code === 'STALE_REVISION' ? faults['stale'] : refusal(language).document.detail
      }
      try {
        if (document.status >= 500) {
          // The store may be out of reach: nothing is asked of it, and the way back stays on the page.
          await sendOpening(request, response, document.status, { typed: link.success ? { ...typed, link: link.data } : typed, fault: { field: null, words: words(wantedLanguage(request)) } })
          return
        }
        if (!link.success) {
          await sendOpening(request, response, document.status, document.code === 'CASE_NOT_FOUND' ? { gone: true } : { typed, fault: { field: null, words: words(wantedLanguage(request)) } })
          return
        }
        const view = thrown instanceof DeskFault && thrown.facts.case !== undefined ? thrown.facts.case : await desk.showCase(link.data, null)
        const asksSpecialist = view.ticket === null && view.step.kind !== 'hand-over' && (isPhoto || request.originalUrl.endsWith('/hand-over'))
        await sendCase(request, response, document.status, view, { typed, fault: { field: isPhoto ? 'photo' : null, words: words(view.language) }, aside: asksSpecialist ? { kind: 'specialist' } : null })
      } catch (fault) {
        if (fault instanceof DeskFault && fault.code === 'CASE_NOT_FOUND') await sendOpening(request, response, 404, { gone: true })
        else next(fault)
      }
    }
  }
}

/** No file was chosen before the button was pressed. */
class NoPhoto extends Error {}

function linkOf(request: Request): string {
  const link = CaseLink.safeParse(request.params['link'])
  if (!link.success) throw new DeskFault('CASE_NOT_FOUND')
  return link.data
}

/** Back to where photos are added: beside the hand-over, or on the sheet that was handed over. */
function photosAddress(view: CaseView): string {
  return `${plainAddress(view.link)}${view.ticket === null && view.step.kind !== 'hand-over' ? '?specialist=' : ''}#photos-title`
}

/** What a page shows besides the step; null for what the case or the guide does not have, and on a sheet that is closed. */
function asideFor(desk: Desk, view: CaseView, { look, plant, specialist }: z.output<typeof Wanted>): PlainAside | null {
  if (view.ticket?.reply != null || view.step.kind === 'red-flag') return null
  if (look !== undefined) {
    const check = checksOf(view).find(({ id }) => id === look)
    return check === undefined ? null : { kind: 'line', check, before: view.lines.find((line) => line.check.id === look)?.answer ?? null }
  }
  if (plant !== undefined) {
    const { hosts } = desk.hosts(view.language)
    const host = hosts.find((row) => row.host === plant)
    return host === undefined ? { kind: 'plants', hosts } : { kind: 'complaints', host: host.host, name: host.name, complaints: desk.complaints(host.host, view.language).complaints }
  }
  return specialist !== undefined && view.ticket === null ? { kind: 'specialist' } : null
}

/** Every check that the sheet may open now. */
function checksOf(view: CaseView): CheckCard[] {
  const { step } = view
  return [
    ...view.lines.map(({ check }) => check),
    ...(step.kind === 'ask' ? [step.check] : step.kind === 'conclude' ? step.turns.map(({ check }) => check) : step.kind === 'hand-over' ? step.unsettled : []),
    ...(view.ticket?.askedBack?.checks.map(({ check }) => check) ?? []),
  ]
}

function contactFault(contact: Contact | null): { readonly field: string, readonly name: PlainFaultName } | null {
  const fits = Contact.safeParse(contact ?? {})
  if (fits.success) return null
  const field = fits.error.issues[0]?.path[0]
  return field === 'email' ? { field, name: 'bad email' } : field === 'phone' ? { field, name: 'bad phone' } : { field: 'name', name: 'long name' }
}

/**
 * The language of a page without a case: chosen on the page, which stands in the address or a field of its form, else what
 * the browser asks for. An open case is in its own.
 */
function wantedLanguage(request: Request): Language {
  const chosen = Language.safeParse(request.query['language'] ?? safeFields(request)['language'])
  return chosen.success ? chosen.data : requestLanguage(request)
}

function safeFields(request: Request): Fields {
  try { return fieldsOf(request) } catch { return {} }
}

function freshKey(): string {
  return randomBytes(16).toString('base64url')
}
