import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import type { Guide } from '../../src/guide/index.js'
import { dangersIn, type MatchIndex } from '../../src/match/index.js'
import { ERRANDS, LIKE_ERRANDS } from '../match/errands.js'
import { CALM_AFRESH, WORRIED_AFRESH } from '../match/fresh-worries.js'
import { FIRST_CALM, FIRST_WORRIED, SECOND_CALM, SECOND_WORRIED, THIRD_CALM, THIRD_WORRIED } from '../match/plain-worries.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { HEARD, QUIET } from '../match/red-flag-sentences.js'
import { ALARMED_ONCE, MISSED_ONCE, SAME_NOUNS, type Spoken, UNUSUAL } from '../match/spoken-dangers.js'
import { CALM, WORRIED } from '../match/worried-and-calm.js'
import { BESIDE_MENDED, CALM_BESIDE_MENDED, CALM_IN_PASSING, WORRIED as VOICES } from '../match/worried-voices.js'

/** Words, where they come from, and the emergencies of which one must be heard; none for calm words. */
export interface DangerExample {
  readonly from: string
  readonly text: string
  readonly anyOf: readonly string[]
}

const OtherQuestion = z.looseObject({ text: z.string().min(1), danger: z.string().nullish() })

/**
 * All worried and calm sentences that may be tuned on: the tuning two thirds of the questions, the second and the third
 * set, the sets of worried sentences, the errands and the casebook. Where a set does not say which card is right, it is
 * the one that the patterns of the red flags raise; dangers on which they raise none are left out.
 */
export async function dangerExamples(guide: Guide, index: MatchIndex): Promise<readonly DangerExample[]> {
  const emergencies = new Set<string>(guide.redFlags.filter(({ level }) => level === 'emergency').map(({ id }) => id))
  const onlyEmergencies = (flags: readonly string[]): readonly string[] => flags.filter((flag) => emergencies.has(flag))
  const heard = (text: string): readonly string[] => onlyEmergencies(dangersIn(index, text).byPattern.map(({ redFlag }) => redFlag))
  const calm = (from: string, texts: readonly string[]): DangerExample[] => texts.map((text) => ({ from, text, anyOf: [] }))
  const worried = (from: string, spoken: readonly Spoken[]): DangerExample[] => spoken.map(([text, flags]) => ({ from, text, anyOf: onlyEmergencies(flags) }))
  const asHeard = (from: string, texts: readonly string[]): DangerExample[] => texts.map((text) => ({ from, text, anyOf: heard(text) })).filter(({ anyOf }) => anyOf.length > 0)
  const others = async (folder: string) => (await readFile(join(import.meta.dirname, '../match', folder, 'questions.jsonl'), 'utf8')).trim().split('\n').map((line) => OtherQuestion.parse(JSON.parse(line)))
  const [second, third] = await Promise.all([others('second-questions'), others('third-questions')])
  const questions = (await readQuestions()).filter(({ text }) => !isHeldBack(text))
  const cases = guide.casebook.map(({ words, ends }) => ({ text: words, danger: ends.kind === 'red flag' }))
  return [
    ...questions.filter(({ redFlags, redFlagsAllowed }) => onlyEmergencies(redFlags).length > 0 || onlyEmergencies(redFlagsAllowed ?? []).length === 0)
      .map(({ text, redFlags }) => ({ from: 'questions', text, anyOf: onlyEmergencies(redFlags) })),
    ...asHeard('second', second.filter(({ danger }) => danger != null).map(({ text }) => text)), ...calm('second', second.filter(({ danger }) => danger == null).map(({ text }) => text)),
    ...calm('third', third.map(({ text }) => text).filter((text) => heard(text).length === 0)),
    ...asHeard('worried and calm', WORRIED), ...calm('worried and calm', CALM),
    ...worried('voices', [...VOICES, ...BESIDE_MENDED]), ...calm('voices', [...CALM_IN_PASSING, ...CALM_BESIDE_MENDED]),
    ...worried('plain', [...FIRST_WORRIED, ...SECOND_WORRIED, ...THIRD_WORRIED]), ...calm('plain', [...FIRST_CALM, ...SECOND_CALM, ...THIRD_CALM]),
    ...worried('spoken', [...MISSED_ONCE, ...UNUSUAL]), ...calm('spoken', [...ALARMED_ONCE, ...SAME_NOUNS]),
    ...Object.entries(HEARD).flatMap(([flag, texts]) => (emergencies.has(flag) ? texts.map((text) => ({ from: 'by card', text, anyOf: [flag] })) : [])), ...calm('by card', QUIET),
    ...worried('afresh', WORRIED_AFRESH), ...calm('afresh', CALM_AFRESH),
    ...calm('errands', [...ERRANDS, ...LIKE_ERRANDS]),
    ...asHeard('casebook', cases.filter(({ danger }) => danger).map(({ text }) => text)),
    ...calm('casebook', cases.filter(({ danger, text }) => !danger && heard(text).length === 0).map(({ text }) => text)),
  ]
}
