import { readFile } from 'node:fs/promises'
import { join } from 'node:path'

/** What is drawn into a built page. */
export interface Drawn {
  readonly title: string
  /** HTML, everything that people wrote in it escaped. */
  readonly html: string
  /** Language of the page; English when left out. */
  readonly language?: string
}

/**
 * A built page that brings its own style, with a place for what is drawn here. It is read once, when it is first needed.
 * @param file its name in the folder of the built screens
 */
export function builtPage(webDir: string, file: string): (drawn: Drawn) => Promise<string> {
  let built: Promise<string> | null = null
  return async ({ title, html, language = 'en' }) => {
    built ??= readFile(join(webDir, file), 'utf8')
    // Functions, so that no dollar sign in people's words means anything.
    return (await built).replace(/<title>[^<]*<\/title>/, () => `<title>${escaped(title)}</title>`)
      .replace('<!-- the sheet -->', () => html).replace('<html lang="en">', () => `<html lang="${language}">`)
  }
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
