import type { RedFlag } from '../guide/index.js'
import type { DangerWeights, LetterSign, LetterWeights, LevelWeights } from './letter-weights.js'
import type { HeardRedFlag } from './matched.js'
import { WEIGHTS } from './score.js'
import { quote, type Token } from './tokens.js'
import { leaning, shareOf, strongest } from './weighed-letter.js'

/**
 * The red flags of a letter: those that the rules heard, and those that it tells of as letters of danger do though no rule
 * heard them, for whoever is frightened seldom says it in the words that a rule foresaw. What a
 * rule heard is never taken back.
 * @param ruled what the rules have heard
 * @param redFlagOf null for a red flag that the guide does not have
 * @param isSmall true for a word that says nothing when it is quoted
 */
export function weighDangers(
  weights: DangerWeights, words: string, tokens: readonly Token[], signs: readonly LetterSign[], ruled: readonly HeardRedFlag[], redFlagOf: (id: string) => RedFlag | null,
  isSmall: (word: string) => boolean,
): readonly HeardRedFlag[] {
  const weigh = (level: RedFlag['level']): readonly HeardRedFlag[] => weighLevel(weights[level], level, words, tokens, signs, ruled, redFlagOf, isSmall)
  const emergencies = weigh('emergency')
  // Beside an emergency a caution that no rule heard adds nothing.
  const cautions = emergencies.length > 0 ? ruled.filter(({ level }) => level === 'caution') : weigh('caution')
  return [...emergencies, ...cautions]
}

function weighLevel(
  { any, kinds }: LevelWeights, level: RedFlag['level'], words: string, tokens: readonly Token[], signs: readonly LetterSign[], heard: readonly HeardRedFlag[], redFlagOf: (id: string) => RedFlag | null,
  isSmall: (word: string) => boolean,
): readonly HeardRedFlag[] {
  const facts = heard.map(({ redFlag }) => ruleSign(redFlag))
  const ruled = heard.filter((flag) => flag.level === level)
  const danger = shareOf(leaning(any, signs, facts))
  const isTold = danger >= (level === 'emergency' ? WEIGHTS.dangerTold : WEIGHTS.cautionTold)
  // Beside what asks to stop everything else nothing is guessed.
  if (!isTold || ruled.some(({ redFlag }) => redFlagOf(redFlag)?.then === 'stop')) return ruled
  const each = [...kinds].map(([redFlag, weights]) => ({ redFlag, weights, share: shareOf(leaning(weights, signs, facts)) })).sort((a, b) => b.share - a.share)
  const all = each.reduce((sum, { share }) => sum + share, 0)
  const told = each.flatMap(({ redFlag, weights, share }, place) => {
    const flag = redFlagOf(redFlag)
    if (flag === null || ruled.some((one) => one.redFlag === redFlag)) return []
    if ((place > 0 || ruled.length > 0) && share / all < WEIGHTS.dangerToldBeside) return []
    // Where nothing else is shown, a guess must be surer.
    if (flag.then === 'stop' && (danger < WEIGHTS.dangerToldAlone || share / all < WEIGHTS.dangerPlain)) return []
    return [{ redFlag: flag.id, level: flag.level, words: tellingWords(any, weights, words, tokens, signs, isSmall) }]
  })
  return [...ruled, ...told]
}

/** The words that spoke most for it, in the asker's order: none too small to say anything, where there are others. */
function tellingWords(
  any: LetterWeights, kind: LetterWeights, words: string, tokens: readonly Token[], signs: readonly LetterSign[], isSmall: (word: string) => boolean,
): HeardRedFlag['words'] {
  const quotable = signs.filter(({ first, last }) => tokens.slice(first, last + 1).some(({ text }) => !isSmall(text)))
  const [forBoth, forKind, forAny] = [strongest(any, strongest(kind, quotable, MOST_QUOTED * 2), MOST_QUOTED), strongest(kind, quotable, MOST_QUOTED), strongest(any, signs, MOST_QUOTED)]
  const telling = [...([forBoth, forKind].find((some) => some.length > 0) ?? forAny)].sort((a, b) => a.first - b.first)
  return telling.filter((one, at) => at === 0 || one.first > (telling[at - 1]?.last ?? -1)).map(({ first, last }) => quote(words, tokens, first, last))
}

/** The sign that a rule has heard a red flag. */
export function ruleSign(redFlag: string): string {
  return `rule ${redFlag}`
}

const MOST_QUOTED = 4
