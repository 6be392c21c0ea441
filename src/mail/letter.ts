/** One part of a letter's body. */
export type LetterPart =
  | { readonly kind: 'words'; readonly text: string }
  /** What a person wrote, set apart; its line ends are kept. */
  | { readonly kind: 'quoted'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly address: string }

/** A letter before it is made plain text and HTML. */
export interface Letter {
  readonly to: string
  /** Tag of BCP 47; English when left out. */
  readonly language?: string
  /** Fixed words and numbers only: a subject is shown on locked screens and kept in logs. */
  readonly subject: string
  readonly parts: readonly LetterPart[]
}

/** The body as plain text. */
export function plainText({ parts }: Letter): string {
  return `${parts.map(plainPart).join('\n\n')}\n`
}

/** The body as HTML: nothing in it loads anything, and whatever people wrote is text. */
export function html({ subject, language = 'en', parts }: Letter): string {
  return [
    '<!doctype html>', `<html lang="${escaped(language)}">`, '<head>', '<meta charset="utf-8">', `<title>${escaped(subject)}</title>`, '</head>',
    '<body style="font: 16px/1.5 sans-serif; max-width: 36em; margin: 1em">', ...parts.map(htmlPart), '</body>', '</html>', '',
  ].join('\n')
}

function plainPart(part: LetterPart): string {
  switch (part.kind) {
    case 'words': return part.text
    case 'quoted': return part.text.split(/\r?\n/).map((line) => `    ${line}`.trimEnd()).join('\n')
    case 'link': return `${part.text}\n${part.address}`
  }
}

function htmlPart(part: LetterPart): string {
  switch (part.kind) {
    case 'words': return `<p>${escaped(part.text)}</p>`
    case 'quoted': return `<blockquote style="margin: 1em 0; padding-left: 1em; border-left: 3px solid #888; white-space: pre-line">${escaped(part.text)}</blockquote>`
    // The address stands there in full, so that it can be read before it is followed.
    case 'link': return `<p>${escaped(part.text)}<br><a href="${escaped(part.address)}">${escaped(part.address)}</a></p>`
  }
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}
