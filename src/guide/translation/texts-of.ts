import { type CheckDraft, type HostDraft, OTHER_ANSWERS, type ProblemDraft, type RedFlagDraft, type RegionDraft, type TargetDraft } from '../drafts.js'

/** A file of the guide whose words can be written in another language. */
export type Original = CheckDraft | ProblemDraft | HostDraft | RedFlagDraft | RegionDraft
export type OriginalKind = Original['kind']

/**
 * One place for words in a translation file, named by the same keys as in the original.
 * - text: one text; list: as many as the English has, in its order. Both are held against the English they were made from.
 * - label: an answer's words; the English is the key they stand under, so they cannot be out of date.
 * - phrases: what people say, written afresh in each language, as many as there are; so are a red flag's hearings.
 */
export interface TextSlot {
  readonly path: readonly string[]
  readonly kind: 'text' | 'label' | 'list' | 'phrases' | 'hearings'
  /** The English words; for phrases they are only an example. */
  readonly english: readonly string[]
  /** Whether a translation that claims to be complete must have it. */
  readonly needed: boolean
}

/** `spray: none` is a word of the guide, not of its readers. */
const NO_SPRAY = 'none'

/** Every word of a file that askers read or say, in the order of the file. */
export function textsOf(original: Original): TextSlot[] {
  switch (original.kind) {
    case 'check': return textsOfCheck(original)
    case 'problem': return textsOfProblem(original)
    case 'host': return textsOfHost(original)
    case 'red flag': return textsOfRedFlag(original)
    case 'region': return textsOfRegion(original)
  }
}

/** The id of a file of the guide. */
export function idOf(original: Original): string {
  return original.kind === 'region' ? original.id : original.id.value
}

/** The name under which a slot's words are kept in the compiled guide. */
export function slotName(kind: OriginalKind, id: string, path: readonly string[]): string {
  return JSON.stringify([kind, id, ...path])
}

function textsOfCheck({ ask, how, why, answers }: CheckDraft): TextSlot[] {
  return [
    text(['ask'], ask.value), text(['how'], how.value), text(['why'], why.value),
    ...answers.flatMap(({ label, saidAs }) => [
      { path: ['answers', label.value, 'shown'], kind: 'label' as const, english: [label.value], needed: true },
      phrases(['answers', label.value, 'said as'], values(saidAs), false),
    ]),
  ]
}

function textsOfProblem({ name, what, advice, cautions, watch }: ProblemDraft): TextSlot[] {
  return [
    text(['name'], name.value), text(['what'], what.value),
    text(['advice', 'bottom line'], advice.bottomLine.value),
    ...list(['advice', 'do now'], values(advice.doNow)),
    ...list(['advice', 'not worth doing'], values(advice.notWorthDoing)),
    ...list(['advice', 'next year'], values(advice.nextYear)),
    ...(advice.spray.value === NO_SPRAY ? [] : [text(['advice', 'spray'], advice.spray.value)]),
    ...list(['cautions'], values(cautions)),
    ...(watch?.escalate == null ? [] : [text(['watch', 'escalate'], watch.escalate.value)]),
  ]
}

function textsOfHost({ name, called, nodes }: HostDraft): TextSlot[] {
  const handOver = (target: TargetDraft | null, path: readonly string[]): TextSlot[] =>
    (target?.kind === 'hand over' ? [text([...path, 'hand over'], target.because)] : [])
  return [
    text(['name'], name), phrases(['called'], values(called), true),
    ...nodes.flatMap(({ name: node, entry, answers, otherAnswers, notSure }) => {
      const path = ['nodes', node.value]
      return [
        ...(entry.length === 0 ? [] : [phrases([...path, 'entry'], values(entry), true)]),
        ...answers.flatMap(({ label, target }) => handOver(target, [...path, 'answers', label.value])),
        ...handOver(otherAnswers, [...path, 'answers', OTHER_ANSWERS]),
        ...handOver(notSure, [...path, 'not sure']),
      ]
    }),
  ]
}

function textsOfRedFlag({ title, doNow, doNot, afterwards, looking }: RedFlagDraft): TextSlot[] {
  return [
    text(['title'], title.value),
    { path: ['hear'], kind: 'hearings', english: [], needed: true },
    ...list(['card', 'do now'], values(doNow)), ...list(['card', 'do not'], values(doNot)),
    ...(afterwards === null ? [] : [text(['afterwards', 'offer'], afterwards.offer.value)]),
    ...(looking === null ? [] : [text(['looking'], looking.value)]),
  ]
}

function textsOfRegion({ name, helpline, districts, numbers }: RegionDraft): TextSlot[] {
  return [
    text(['name'], name), text(['helpline'], helpline),
    ...[...districts].map(([id, shown]) => text(['districts', id], shown)),
    ...[...numbers].map(([id, { name: shown }]) => text(['numbers', id, 'name'], shown)),
  ]
}

function text(path: readonly string[], english: string): TextSlot {
  return { path, kind: 'text', english: [english], needed: true }
}

function list(path: readonly string[], english: readonly string[]): TextSlot[] {
  return english.length === 0 ? [] : [{ path, kind: 'list', english, needed: true }]
}

function phrases(path: readonly string[], english: readonly string[], needed: boolean): TextSlot {
  return { path, kind: 'phrases', english, needed }
}

function values(located: readonly { readonly value: string }[]): string[] {
  return located.map(({ value }) => value)
}
