import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Response } from 'express'
import { type PlainPage, renderPlain } from '../../web/plain/index.js'

/** Draws the plain pages into the built page that brings their style. */
export interface PageFrame {
  send(response: Response, status: number, page: PlainPage): Promise<void>
}

/** The frame is read once, when it is first needed. */
export function pageFrame(webDir: string): PageFrame {
  let frame: Promise<string> | null = null
  return {
    async send(response, status, page) {
      frame ??= readFile(join(webDir, 'ask.html'), 'utf8')
      const { language, title, html } = renderPlain(page)
      // Functions, so that no dollar sign in people's words means anything.
      const whole = (await frame).replace(/<title>[^<]*<\/title>/, () => `<title>${escaped(title)}</title>`).replace('<!-- the sheet -->', () => html).replace('<html lang="en">', () => `<html lang="${language}">`)
      response.status(status).set({ 'cache-control': 'no-store', 'content-language': language }).vary('Accept-Language').type('html').send(whole)
    },
  }
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
