import type { Finding, Evidence } from '../../src/engine/index.js'
import { readCase, withFinding } from '../../src/engine/index.js'
import { type Guide, type HostId, type NodeName, NOT_SURE, type WorkedCase } from '../../src/guide/index.js'
import { buildMatchIndex, findingsFor, type MatchIndex, matchQuestion } from '../../src/match/index.js'
import { offers } from '../../src/desk/views/place-view.js'
import { bestFitting } from '../../src/web/case/best-fitting.js'
import { offeredPlaces } from '../../src/web/case/offered-places.js'
import { UNKNOWN_PLANT } from '../../src/web/case/unknown-plant.js'
import { wholeGuide } from '../match/small-guide.js'

/** A case ends well before this many checks. */
const MOST_CHECKS = 30
/** The aim: the median casebook case needs no more keys than this once the question is typed. */
const AIM = 6

interface Pressed {
  readonly case: string
  readonly keys: number
  readonly checks: number
  /** Whether the plant stood among the places offered. */
  readonly offered: boolean
}

/**
 * Keys pressed on the call sheet for each case of the casebook, from the question typed to the advice, the hand-over or the
 * card: Enter starts the sheet, a number takes an offered place, one key answers a check. A plant that is not offered is
 * picked: P, the fewest letters of its name that bring it first, Enter, then the line 'None of these' by Tab and Enter.
 */
export async function keysBench(json: boolean): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const all = guide.casebook.map((worked) => press(guide, index, worked))
  const keys = all.map((one) => one.keys).sort((a, b) => a - b)
  const at = (share: number): number => keys[Math.min(keys.length - 1, Math.floor(keys.length * share))] ?? 0
  const figures = {
    cases: all.length, median: at(0.5), ninthTenth: at(0.9), most: at(1), withinAim: share(all, (one) => one.keys <= AIM),
    offered: share(all, (one) => one.offered), medianChecks: all.map((one) => one.checks).sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0,
  }
  if (json) {
    process.stdout.write(`${JSON.stringify({ ...figures, each: all }, null, 2)}\n`)
    return
  }
  process.stdout.write([
    `${figures.cases} cases of the casebook, keys from the question typed to its end:`,
    `  median ${figures.median} (aim: ${AIM}), nine in ten within ${figures.ninthTenth}, most ${figures.most}`,
    `  ${percent(figures.withinAim)} within ${AIM} keys; the plant was offered in ${percent(figures.offered)}; median of ${figures.medianChecks} checks answered`, '',
  ].join('\n'))
}

function press(guide: Guide, index: MatchIndex, worked: WorkedCase): Pressed {
  const matched = matchQuestion(index, worked.words)
  const redFlags = matched.redFlags.map(({ redFlag }) => redFlag)
  const end = (keys: number, checks: number, offered: boolean): Pressed => ({ case: worked.id, keys, checks, offered })
  // Enter starts the sheet.
  let keys = 1
  let evidence: Evidence = { redFlags, carriedOn: false, start: null, findings: [] }
  const setting = { on: worked.on, district: worked.district }
  if (readCase(guide, evidence, setting).step.kind === 'red-flag') return end(keys, 0, true)

  const place = placeOf(guide, worked, matched)
  keys += place.keys
  const findings: Finding[] = findingsFor(index, worked.words, place.host).map(({ check, answer }) => ({ check, answer, from: 'said' }))
  evidence = { ...evidence, start: { host: place.host, node: place.node }, findings }
  for (let checks = 0; checks < MOST_CHECKS; checks++) {
    const { step } = readCase(guide, evidence, setting)
    if (step.kind !== 'ask') return end(keys, checks, place.offered)
    const answer = worked.findings.get(guide.checkNumbers.get(step.check) ?? -1) ?? NOT_SURE
    evidence = { ...evidence, findings: withFinding(evidence.findings, { check: step.check, answer, from: 'asked' }) }
    keys += 1
  }
  throw new Error(`The case ${worked.id} did not end within ${MOST_CHECKS} checks.`)
}

interface Settled {
  readonly host: HostId
  readonly node: NodeName | null
  readonly keys: number
  readonly offered: boolean
}

function placeOf(guide: Guide, worked: WorkedCase, matched: ReturnType<typeof matchQuestion>): Settled {
  const heard = offers(guide, guide, {
    hosts: matched.hosts.map((one) => ({ ...one, words: [...one.words] })),
    entries: matched.entries.map((one) => ({ ...one, words: [...one.words], problems: [...one.problems] })),
    confidence: matched.confidence, outOfScope: matched.outOfScope,
  })
  const wanted = worked.host === null ? undefined : guide.hosts[worked.host]
  const offer = offeredPlaces(heard).find(({ host }) => wanted === undefined || host === wanted.id)
  if (offer !== undefined) return { host: offer.host as HostId, node: offer.node as NodeName | null, keys: 1, offered: true }
  // X: nobody knows the plant.
  if (wanted === undefined || wanted.id === UNKNOWN_PLANT) return { host: UNKNOWN_PLANT as HostId, node: null, keys: 1, offered: wanted !== undefined }
  const letters = fewestLetters(guide, wanted.name)
  const complaints = wanted.nodes.filter(({ entry }) => entry.length > 0).length
  // P, the letters, Enter; then Tab past the complaints shown to the last line, and Enter.
  return { host: wanted.id, node: null, keys: 1 + letters + 1 + Math.min(complaints, MOST_LINES) + 1 + 1, offered: false }
}

/** Lines of complaints that the picker shows at most. */
const MOST_LINES = 8

function fewestLetters(guide: Guide, name: string): number {
  for (let length = 1; length < name.length; length++) {
    if (bestFitting(guide.hosts, (host) => [host.name, ...host.called], name.slice(0, length)).shown[0]?.name === name) return length
  }
  return name.length
}

function share<Row>(rows: readonly Row[], fits: (row: Row) => boolean): number {
  return rows.length === 0 ? 0 : rows.filter(fits).length / rows.length
}

function percent(part: number): string {
  return `${(part * 100).toFixed(1)} %`
}
