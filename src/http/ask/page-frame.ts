import type { Response } from 'express'
import { type PlainPage, renderPlain } from '../../web/plain/index.js'
import { builtPage } from '../built-page.js'

/** Draws the plain pages into the built page that brings their style. */
export interface PageFrame {
  send(response: Response, status: number, page: PlainPage): Promise<void>
}

/** The plain pages of the panel, in the language of each. */
export function pageFrame(webDir: string): PageFrame {
  const frame = builtPage(webDir, 'ask.html')
  return {
    async send(response, status, page) {
      const drawn = renderPlain(page)
      const whole = await frame(drawn)
      response.status(status).set({ 'cache-control': 'no-store', 'content-language': drawn.language }).vary('Accept-Language').type('html').send(whole)
    },
  }
}
