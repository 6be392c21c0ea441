import { Document, isMap, isNode, isPair, isScalar, isSeq, type Node as YamlNode, Pair, parseDocument, Scalar, visit, YAMLMap } from 'yaml'
import { englishMark } from './english-mark.js'
import { idOf, type Original, type TextSlot, textsOf } from './texts-of.js'
import type { HeldTranslation } from './translation-draft.js'

/** How the comments begin that this module writes, and takes away again when their text is done. */
const ENGLISH = ' en: '
const STALE = ' OUT OF DATE, the English now says: '
const LINE_WIDTH = 120
/** English phrases shown as an example; as many as there are need not be translated. */
const MOST_EXAMPLES = 40

/**
 * The text of a translation file, brought up to date with its original: what is there is kept, keys that are missing
 * are added with the English above them as a comment, and texts whose English has changed are marked by one. Keys that
 * the original does not have are kept at the end for the translator to judge.
 * @param held the file as it stands, or null to begin one
 * @param checked the translator has read every text against the English of today: marks are taken away
 */
export function refreshTranslation(original: Original, held: HeldTranslation | null, { checked }: { readonly checked: boolean }): string {
  const document = held === null ? new Document(new YAMLMap()) : parseDocument(held.draft.parsed.file.text)
  const root = isMap(document.contents) ? document.contents : new YAMLMap()
  document.contents = root as never
  clearComments(document)
  const slots = textsOf(original)
  const plan = planOf(slots)
  const comments = new Map(slots.map((slot) => [slot, commentOn(slot, held, checked)]))
  const head = [pairOf(root, original.kind, new Scalar(idOf(original))), pairOf(root, 'complete', new Scalar('no'))]
  fillMap(root, plan, comments)
  const tail = root.items.filter((pair) => ['accepts'].includes(keyOf(pair)))
  const madeFrom = pairOf(root, 'made from', new Scalar(''))
  madeFrom.value = new Scalar(marks(slots, held, checked).join(' '))
  const inPlace = new Set([...head, ...tail, madeFrom])
  root.items = [...head, ...root.items.filter((pair) => !inPlace.has(pair)), ...tail, madeFrom]
  return document.toString({ lineWidth: LINE_WIDTH, nullStr: '', flowCollectionPadding: true })
}

/** What the translator has seen of the English: of good and new texts that of today, of stale ones still the older. */
function marks(slots: readonly TextSlot[], held: HeldTranslation | null, checked: boolean): string[] {
  const state = new Map(held?.texts.map((text) => [text.slot.path.join('\n'), text.state]))
  const seen = slots.filter(({ kind, path }) => (kind === 'text' || kind === 'list') && (checked || state.get(path.join('\n')) !== 'out of date'))
  return [...new Set(seen.map(({ english }) => englishMark(english)))]
}

function commentOn(slot: TextSlot, held: HeldTranslation | null, checked: boolean): string | null {
  const state = held?.texts.find((text) => text.slot.path.join('\n') === slot.path.join('\n'))?.state ?? 'missing'
  if (state === 'missing') {
    if (slot.kind === 'hearings') return `${ENGLISH}written afresh, as trees/README.md shows under "A red flag"`
    if (slot.kind === 'label') return null
    return slot.english.slice(0, MOST_EXAMPLES).map((text) => `${ENGLISH}${slot.kind === 'text' ? '' : '- '}${text}`).join('\n')
  }
  if (state === 'out of date' && !checked) return slot.english.map((text) => `${STALE}${text}`).join('\n')
  return null
}

/** The keys of a translation in the order of the original, nested as in the file. */
type Plan = Map<string, Plan | TextSlot>

function planOf(slots: readonly TextSlot[]): Plan {
  const plan: Plan = new Map()
  for (const slot of slots) {
    let here = plan
    slot.path.forEach((key, depth) => {
      if (depth === slot.path.length - 1) here.set(key, slot)
      else {
        const below = here.get(key)
        const next: Plan = below instanceof Map ? below : new Map()
        here.set(key, next)
        here = next
      }
    })
  }
  return plan
}

function fillMap(map: YAMLMap, plan: Plan, comments: ReadonlyMap<TextSlot, string | null>): void {
  const ordered = [...plan].flatMap(([key, part]): Pair[] => {
    const there = map.items.find((pair) => keyOf(pair) === key)
    if (part instanceof Map) {
      const pair = there ?? pairOf(map, key, new YAMLMap())
      if (!isMap(pair.value)) pair.value = new YAMLMap()
      fillMap(pair.value as YAMLMap, part, comments)
      return [pair]
    }
    // Sayings need not be there, so their lack is no gap to fill.
    if (there === undefined && !part.needed && part.english.length === 0) return []
    const pair = there ?? pairOf(map, key, new Scalar(null))
    const comment = comments.get(part) ?? null
    const { key: name } = pair
    if (comment !== null && isNode(name)) name.commentBefore = [name.commentBefore, comment].filter((some) => some != null && some !== '').join('\n')
    return [pair]
  })
  const placed = new Set(ordered)
  map.flow = false
  map.items = [...ordered, ...map.items.filter((pair) => !placed.has(pair))]
}

function pairOf(map: YAMLMap, key: string, value: YamlNode): Pair {
  const there = map.items.find((pair) => keyOf(pair) === key)
  if (there !== undefined) return there
  const pair = new Pair<unknown, unknown>(new Scalar(key), value)
  map.items.push(pair)
  return pair
}

function keyOf(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : String(pair.key)
}

/** Takes away the comments written here before; the translator's own stay. */
function clearComments(document: Document): void {
  const own = (comment: string | null | undefined): string | null => {
    if (comment == null) return null
    const kept = comment.split('\n').filter((line) => !line.startsWith(ENGLISH) && !line.startsWith(STALE))
    return kept.length === 0 ? null : kept.join('\n')
  }
  document.commentBefore = own(document.commentBefore)
  document.comment = own(document.comment)
  visit(document, (_, node) => {
    if (isPair(node) || !isNode(node)) return
    if (isScalar(node) || isMap(node) || isSeq(node)) {
      node.commentBefore = own(node.commentBefore)
      node.comment = own(node.comment)
    }
  })
}
