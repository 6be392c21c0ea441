import type { HostDraft } from '../drafts.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/**
 * Warning. A phrase stands at one node of a tree only, and does not name another host, which would then be taken for
 * the plant. The same phrase in two trees is no fault: the plant decides between them.
 */
export function entriesNotShadowedRule(context: RuleContext): void {
  const hosts = [...context.guide.hosts.values()]
  const names: NamesByFirstWord = new Map()
  for (const host of hosts) {
    if (host.id.value === UNKNOWN_PLANT) continue
    for (const name of host.called) {
      const padded = ` ${plain(name.value)} `
      const first = firstWord(padded)
      const sameFirstWord = names.get(first) ?? new Map<string, Holder[]>()
      names.set(first, sameFirstWord.set(padded, [...(sameFirstWord.get(padded) ?? []), { host, name }]))
    }
  }
  for (const host of hosts) {
    const seen = new Map<string, Located<string>>()
    for (const node of host.nodes) {
      for (const phrase of node.entry) {
        const key = plain(phrase.value)
        const first = seen.get(key)
        if (first !== undefined) {
          context.warn({
            code: 'SHADOWED_ENTRY', at: [phrase.at, first.at], of: host,
            message: `The phrase "${phrase.value}" stands at two places in the tree of "${host.id.value}". Expected it once, where it says most.`,
          })
        } else seen.set(key, phrase)
        const other = namedHost(` ${key} `, host, names)
        if (other === null) continue
        context.warn({
          code: 'SHADOWED_ENTRY', at: [phrase.at, other.name.at], of: host,
          message: `The phrase "${phrase.value}" names "${other.name.value}", so it would be taken for the host "${other.host.id.value}". Expected a phrase without another host's name.`,
        })
      }
    }
  }
}

interface Holder {
  readonly host: HostDraft
  readonly name: Located<string>
}

/** Names with a blank at either end, under their first word: a guide has thousands of names and of phrases. */
type NamesByFirstWord = Map<string, Map<string, Holder[]>>

function namedHost(padded: string, own: HostDraft, names: NamesByFirstWord): Holder | null {
  for (const word of padded.trim().split(' ')) {
    for (const [name, holders] of names.get(word) ?? []) {
      if (padded.includes(name) && !holders.some(({ host }) => host === own)) return holders[0] ?? null
    }
  }
  return null
}

function firstWord(padded: string): string {
  return padded.trim().split(' ', 1)[0] ?? ''
}

/** Its names ("tree", "bush") are too general to settle the plant, so they take no phrase from another tree; see src/match. */
const UNKNOWN_PLANT = 'unknown-plant'

function plain(phrase: string): string {
  return phrase.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '').replace(/['’]/g, '').replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
}
