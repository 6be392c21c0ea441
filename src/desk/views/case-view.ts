import type { CaseView, Line } from '../../../shared/index.js'
import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { checksToComeOf, readCaseFile, usableEvidence } from '../cases/read-case-file.js'
import { checkNamed } from '../guide-names.js'
import { checkCard, flagCards } from './cards.js'
import { placeView } from './place-view.js'
import { stepView } from './step-view.js'
import { withUntranslated } from './untranslated.js'

/** What belongs to a case besides its evidence. */
export interface CaseBeside {
  readonly notes: CaseView['notes']
  readonly photos: CaseView['photos']
  readonly ticket: CaseView['ticket']
}

/**
 * A case as the screens show it.
 * @param guide the guide of today, in the language of whoever looks
 * @param own the same as it was written
 */
export function caseView(guide: Guide, own: Guide, file: CaseFile, beside: CaseBeside): CaseView {
  const reading = readCaseFile(guide, file)
  return withUntranslated(guide, own, {
    link: file.link, revision: file.revision, language: file.language, words: [...file.words], openedAt: file.openedAt, askedOn: file.askedOn,
    district: file.district,
    cards: flagCards(guide, reading.cards),
    carriedOn: file.evidence.carriedOn,
    place: placeView(guide, own, file, reading),
    lines: filledLines(guide, file, reading),
    notes: beside.notes, photos: [...beside.photos],
    step: stepView(guide, reading, checksToComeOf(guide, file), file.plausible),
    ticket: beside.ticket, practice: file.practice,
    guide: guide.hash,
  })
}

/** The answered checks in the order in which they were first answered. */
function filledLines(guide: Guide, file: CaseFile, reading: Reading): Line[] {
  const onPath = new Set(reading.path.map(({ finding }) => finding.check))
  return usableEvidence(guide, file.evidence).findings.flatMap(({ check: id, answer, from }): Line[] => {
    const check = checkNamed(guide, id)
    return check === null ? [] : [{ check: checkCard(check), answer, from, onPath: onPath.has(id) }]
  })
}
