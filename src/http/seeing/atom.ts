import { create } from 'xmlbuilder2'
import type { SeeingList, SeeingNote } from '../../../shared/index.js'

const ATOM = 'http://www.w3.org/2005/Atom'

/**
 * The approved notes as an Atom feed (RFC 4287). Ids are tag addresses (RFC 4151) of the week and the service's own host,
 * which stay the same when a note is approved anew; `updated` then moves.
 * @param origin where the service is seen, such as https://helpline.example
 */
export function atomFeed({ helpline, region, notes }: SeeingList, origin: string): string {
  const tag = `tag:${new URL(origin).hostname},2026:seeing`
  return create({ version: '1.0', encoding: 'utf-8' }, {
    feed: {
      '@xmlns': ATOM, '@xml:lang': 'en',
      id: tag,
      title: `What we are seeing in ${region}`,
      updated: notes.map(({ updated }) => updated).sort().at(-1) ?? NEVER,
      author: { name: helpline },
      link: [
        { '@rel': 'self', '@type': 'application/atom+xml', '@href': `${origin}/seeing.atom` },
        { '@rel': 'alternate', '@type': 'text/html', '@href': `${origin}/seeing` },
      ],
      entry: notes.map((note) => ({
        id: `${tag}/${note.week}`,
        title: note.title,
        published: note.published,
        updated: note.updated,
        link: { '@rel': 'alternate', '@type': 'text/html', '@href': `${origin}/seeing?week=${note.week}` },
        content: { '@type': 'text', '#': plainText(note) },
      })),
    },
  }).end({ prettyPrint: true })
}

/** A feed must say when it was last changed (RFC 4287, 4.1.1); one that never was says so by a date before all. */
const NEVER = '1970-01-01T00:00:00Z'

function plainText({ lead, problems }: SeeingNote): string {
  return [lead, ...problems.map(({ name, text }) => `${name}: ${text}`)].join('\n\n')
}
