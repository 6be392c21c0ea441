import type { Guide, Problem } from '../../guide/index.js'
import { wordingOf } from '../wording/index.js'
import { sprayInWords } from './spray.js'

/** A problem's advice as a specialist may send it, and the sentences that were kept out of it. */
export interface AnswerText {
  readonly text: string
  /** Sentences that send the asker to a specialist: the answer comes from one. */
  readonly leftOut: readonly string[]
}

/**
 * A problem's advice as plain text, for a specialist to start an answer from. Sentences that send the asker to a
 * specialist are left out, or say 'us' where they begin with a condition that may still come true.
 */
export function answerText(guide: Pick<Guide, 'language'>, { advice, cautions, watch }: Problem): AnswerText {
  const words = wordingOf(guide)
  const leftOut: string[] = []
  const suit = (text: string): string => {
    const kept: string[] = []
    for (const sentence of sentencesOf(text)) {
      const suited = suitSentence(sentence)
      if (suited === null) leftOut.push(sentence)
      else kept.push(suited)
    }
    return kept.join(' ')
  }
  const list = (title: string, lines: readonly string[]): string => {
    const kept = lines.map(suit).filter((line) => line !== '')
    return kept.length === 0 ? '' : `${title}\n${kept.map((line) => `- ${line}`).join('\n')}`
  }
  const parts = [
    suit(advice.bottomLine),
    watch === null ? '' : suit(watch.escalate),
    list(words.answer.doNow, advice.doNow), list(words.answer.notWorthDoing, advice.notWorthDoing), list(words.answer.nextYear, advice.nextYear),
    advice.spray === 'none' ? '' : suit(sprayInWords(advice.spray, words.noSpray)),
    list(words.answer.cautions, cautions),
  ]
  return { text: parts.filter((part) => part !== '').join('\n\n'), leftOut }
}

/**
 * The sentence as it suits an answer, or null when it only sends the asker to whoever is writing. Sentences in Spanish are
 * told by their own words, whatever the language asked for: a text without a translation stands in English among them.
 */
function suitSentence(sentence: string): string | null {
  if (SPANISH_SENDS_ON.test(sentence)) {
    if (!SPANISH_CONDITION.test(sentence)) return null
    const suited = sentence.replace(/(?<!\p{L})(pregunte|pregúntele|avise|dígaselo|dígale|enséñeselo|muéstreselo|consulte) (a|con) (un|una|el|la) especialista/giu, 'díganoslo')
    return /especialista|(?<!\p{L})avise de (ello|esto)/iu.test(suited) ? null : suited
  }
  // 'Leave the plant where it is, take photos and report it.': the first half still holds.
  const halved = sentence.replace(/, take photos and report it\b/i, '')
  const suited = CONDITION.test(halved)
    ? halved.replace(/\b(ask|tell|show) (a|the) specialist\b/gi, 'tell us').replace(/\b(a|the) specialist\b/gi, 'we')
    : halved
  return (CONDITION.test(halved) ? NAMES_A_SPECIALIST : SENDS_ON).test(suited) ? null : suited
}

function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.!?])\s+(?=["“(\p{Lu}\p{N}])/u)
}

const NAMES_A_SPECIALIST = /\bspecialists?\b/i

/** Sentences that hand the case to a specialist, or gather for one: all of that is behind an answer. */
const SENDS_ON = /\bspecialists?\b|\breport it\b|\b(send|show) us\b|\bsend (them|photos?|a photo)\b|\btake (clear )?photos?\b|^(ask for photos|note the place)\b|\buntil then\b/i

/** The same in Spanish: 'Pregunte a un especialista', 'Avise de ello', 'Mándenos fotos', 'Haga fotos'. */
const SPANISH_SENDS_ON = /especialistas?|(?<!\p{L})avise de (?:ello|esto)(?!\p{L})|(?<!\p{L})(?:mándenos|envíenos|enséñenos|muéstrenos)(?!\p{L})|(?<!\p{L})(?:haga|tome|saque) (?:unas |algunas )?fotos|(?<!\p{L})hasta entonces(?!\p{L})/iu

/** 'Si sale baba, …' */
const SPANISH_CONDITION = /^(?:si|cuando|donde)(?!\p{L})/iu

/** 'If slime oozes, …' may still come true after the answer. */
const CONDITION = /^(if|when|where|should)\b/i
