import type { CaseView, EntryOffer, HostOffer } from '../../../shared/index.js'
import type { Reading } from '../../engine/index.js'
import { type Guide, isJobHost } from '../../guide/index.js'
import type { CaseFile, KeptMatch } from '../cases/case-file.js'
import { sayNothing } from '../../match/index.js'
import { hostNamed, nodeNamed } from '../guide-names.js'
import { phraseShown } from './untranslated.js'

/** How many of each are offered; more would be a list to search, which the screens have apart. */
const MOST_HOSTS = 6
const MOST_ENTRIES = 8

/** The plant and the complaint of a case, and what else it might be. */
export function placeView(
  guide: Guide, own: Guide, file: Pick<CaseFile, 'evidence' | 'matched'>, reading: Pick<Reading, 'host'>,
): CaseView['place'] {
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  const { start } = file.evidence
  const started = start === null ? null : hostNamed(guide, start.host)
  const node = started === null || start === null || start.node === null ? null : nodeNamed(started, start.node)
  const heard = file.matched.entries.find((entry) => entry.host === start?.host && entry.node === start.node)
  return {
    host: host === null ? null : { host: host.id, name: host.name, ...isJobHost(guide, host) ? { job: true } : {} },
    node: node?.name ?? null,
    complaint: node === null ? null : phraseShown(own, node.entry, heard?.phrase ?? null),
    ...offers(guide, own, file.matched),
    confidence: file.matched.confidence,
    outOfScope: file.matched.outOfScope,
  }
}

/** The plants and complaints heard, best first; those that the guide no longer has are left out. */
export function offers(guide: Guide, own: Guide, matched: KeptMatch): { hosts: HostOffer[]; entries: EntryOffer[] } {
  const hosts = matched.hosts.flatMap(({ host: name, score, words }): HostOffer[] => {
    const host = hostNamed(guide, name)
    return host === null ? [] : [{ host: host.id, name: host.name, score, words: tellingWords(words, guide.language) }]
  })
  const entries = matched.entries.flatMap(({ host: name, node, score, phrase, words }): EntryOffer[] => {
    const host = hostNamed(guide, name)
    const known = host === null ? null : nodeNamed(host, node)
    if (host === null || known === null) return []
    return [{ host: host.id, hostName: host.name, node, phrase: phraseShown(own, known.entry, phrase) ?? phrase, score, words: tellingWords(words, guide.language) }]
  })
  return { hosts: hosts.slice(0, MOST_HOSTS), entries: entries.slice(0, MOST_ENTRIES) }
}

/** The words worth quoting back: an 'is' or 'the' among them would look as if we had heard nothing. */
function tellingWords(words: HostOffer['words'], language: string): HostOffer['words'] {
  return words.filter(({ text }) => !sayNothing(text, language))
}
