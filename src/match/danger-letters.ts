import type { RedFlag } from '../guide/index.js'
import type { DangerWeights, LetterSign, LetterWeights, LevelWeights } from './letter-weights.js'
import type { HeardRedFlag } from './matched.js'
import type { RuledFlag } from './red-flags.js'
import { WEIGHTS } from './score.js'
import { quote, type Token } from './tokens.js'
import { leaning, shareOf, strongest } from './weighed-letter.js'

/** A letter as it is weighed. */
export interface WeighedLetter {
  readonly words: string
  readonly tokens: readonly Token[]
  readonly signs: readonly LetterSign[]
  /** Words that say nothing when they are quoted. */
  readonly stopWords: ReadonlySet<string>
}

/** Finds a red flag of the guide; null for one that it does not have. */
type FindRedFlag = (id: string) => RedFlag | null

/**
 * The red flags of a letter: those that the rules heard, and those that it tells of as letters of danger do though no rule
 * heard them, for whoever is frightened seldom says it in the words that a rule foresaw. What a rule heard is taken back where
 * the letter as a whole hardly tells of any danger, and so is one beside a likelier one of which the letter says next to
 * nothing ("my horse has eaten laurel": nobody else ate); never what asks to stop.
 * @param ruled what the rules have heard
 */
export function weighDangers(weights: DangerWeights, letter: WeighedLetter, ruled: readonly RuledFlag[], redFlagOf: FindRedFlag): readonly HeardRedFlag[] {
  const emergencies = weighLevel(weights.emergency, 'emergency', letter, ruled, redFlagOf)
  // Beside an emergency a caution that no rule heard adds nothing.
  const cautions = emergencies.length > 0 ? ruled.filter(({ level }) => level === 'caution').map(asHeard) : weighLevel(weights.caution, 'caution', letter, ruled, redFlagOf)
  return [...emergencies, ...cautions]
}

/** Which rules heard it matters for the weighing alone. */
function asHeard({ redFlag, level, words }: RuledFlag): HeardRedFlag {
  return { redFlag, level, words }
}

function weighLevel({ any, kinds }: LevelWeights, level: RedFlag['level'], letter: WeighedLetter, heard: readonly RuledFlag[], redFlagOf: FindRedFlag): readonly HeardRedFlag[] {
  const { signs } = letter
  const facts = heard.flatMap(({ redFlag, rules }) => [redFlag, ...rules].map(ruleSign))
  const danger = shareOf(leaning(any, signs, facts))
  const asks = ({ redFlag }: HeardRedFlag): boolean => redFlagOf(redFlag)?.then === 'stop'
  // A rule of which nothing has been learnt, such as one that a guide has added, is believed.
  const isLearnt = ({ rules }: RuledFlag): boolean => rules.every((rule) => any.signs.has(ruleSign(rule)))
  const ruled = heard.filter((flag) => flag.level === level && (danger >= WEIGHTS.dangerKept[level] || asks(flag) || !isLearnt(flag))).map(asHeard)
  const isTold = danger >= (level === 'emergency' ? WEIGHTS.dangerTold : WEIGHTS.cautionTold)
  const isOneOfSeveral = level === 'emergency' && ruled.length > 1
  // Beside what asks to stop everything else nothing is guessed.
  if ((!isTold && !isOneOfSeveral) || ruled.some(asks)) return ruled
  const each = [...kinds].map(([redFlag, weights]) => ({ redFlag, weights, share: shareOf(leaning(weights, signs, facts)) })).sort((a, b) => b.share - a.share)
  const all = each.reduce((sum, { share }) => sum + share, 0)
  const kept = isOneOfSeveral ? likelyEnough(ruled, new Map(each.map(({ redFlag, share }) => [redFlag, share / all]))) : ruled
  if (!isTold) return kept
  const told = each.flatMap(({ redFlag, weights, share }, place) => {
    const flag = redFlagOf(redFlag)
    if (flag === null || ruled.some((one) => one.redFlag === redFlag)) return []
    if ((place > 0 || ruled.length > 0) && share / all < WEIGHTS.dangerToldBeside) return []
    // Where nothing else is shown, a guess must be surer.
    if (flag.then === 'stop' && (danger < WEIGHTS.dangerToldAlone || share / all < WEIGHTS.dangerKindAlone)) return []
    return [{ redFlag: flag.id, level: flag.level, words: tellingWords(any, weights, letter) }]
  })
  return [...kept, ...told]
}

/** The red flags that rules heard, without those that have hardly a share of the danger; the likeliest always stays, and so does one of which no letter tells. */
function likelyEnough(ruled: readonly HeardRedFlag[], shares: ReadonlyMap<string, number>): readonly HeardRedFlag[] {
  const partOf = ({ redFlag }: HeardRedFlag): number => shares.get(redFlag) ?? 1
  const most = Math.max(...ruled.map(partOf))
  return ruled.filter((flag) => partOf(flag) >= Math.min(most, WEIGHTS.dangerKeptBeside))
}

/** The words that spoke most for it, in the asker's order: none too small to say anything, where there are others. */
function tellingWords(any: LetterWeights, kind: LetterWeights, { words, tokens, signs, stopWords }: WeighedLetter): HeardRedFlag['words'] {
  const quotable = signs.filter(({ first, last }) => tokens.slice(first, last + 1).some(({ text }) => !stopWords.has(text)))
  const choices = [strongest(any, strongest(kind, quotable, MOST_QUOTED * 2), MOST_QUOTED), strongest(kind, quotable, MOST_QUOTED), strongest(any, signs, MOST_QUOTED)]
  const telling = [...(choices.find((some) => some.length > 0) ?? [])].sort((a, b) => a.first - b.first)
  return telling.filter((one, at) => at === 0 || one.first > (telling[at - 1]?.last ?? -1)).map(({ first, last }) => quote(words, tokens, first, last))
}

/**
 * The sign that some rule has heard a red flag, or that a rule of that name has: some rules are right more often than others.
 * @param heard id of a red flag, or name of a rule
 */
export function ruleSign(heard: string): string {
  return `rule ${heard}`
}

const MOST_QUOTED = 4
