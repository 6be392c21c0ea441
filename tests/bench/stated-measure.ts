import type { Labelled } from '../match/stated-sample/read-sample.js'
import type { Answered } from './match-measure.js'

/** A share of counted things with the interval that holds the true one in 95 of 100 such samples; 0 to 1. */
export interface Share {
  readonly of: number
  readonly share: number
  readonly from: number
  readonly to: number
}

/** How the answers heard in fully labelled questions agree with all that the words say. */
export interface StatedFigures {
  readonly questions: number
  /** Heard answers that are said. */
  readonly precision: Share
  /** Heard answers where the words say another answer of the check. */
  readonly contradicted: Share
  /** Checks that the words answer and that were heard right. */
  readonly recall: Share
}

/** Measures the hearing of stated answers on questions labelled in full. */
export function measureStated(sample: readonly Labelled[], answer: (words: string) => Pick<Answered, 'findings'>): StatedFigures {
  const heard = sample.flatMap(({ text, said }) => answer(text).findings.map(({ check, answer: given }) => ({ given, said: said[check] })))
  const right = heard.filter(({ given, said }) => said?.includes(given)).length
  return {
    questions: sample.length,
    precision: shareOf(right, heard.length),
    contradicted: shareOf(heard.filter(({ given, said }) => said !== undefined && !said.includes(given)).length, heard.length),
    recall: shareOf(right, sample.reduce((sum, { said }) => sum + Object.keys(said).length, 0)),
  }
}

/**
 * The share with Wilson's score interval at 95 %.
 * E. B. Wilson, "Probable inference, the law of succession, and statistical inference", JASA 22 (1927) 209-212.
 */
export function shareOf(count: number, of: number): Share {
  if (of === 0) return { of, share: 0, from: 0, to: 1 }
  const share = count / of
  const middle = (share + Z * Z / (2 * of)) / (1 + Z * Z / of)
  const half = (Z / (1 + Z * Z / of)) * Math.sqrt(share * (1 - share) / of + Z * Z / (4 * of * of))
  return { of, share, from: Math.max(0, middle - half), to: Math.min(1, middle + half) }
}

const Z = 1.959964
