/**
 * Frequency words of the profiles and the share each stands for.
 * Medians of a survey of science writers: Mosteller F., Youtz C. (1990), Quantifying probabilistic expressions,
 * Statistical Science 5(1): 2-12, Table 2 (read in a public transcription). *always* (99.7) and *never* (0.3) are
 * held at 99 % and 1 % so that one answer can never rule a cause in or out alone.
 */
export const frequencyShares = {
  always: 0.99,
  'almost always': 0.917,
  'very often': 0.828,
  usually: 0.751,
  often: 0.725,
  'as often as not': 0.5,
  sometimes: 0.25,
  occasionally: 0.2,
  seldom: 0.102,
  rarely: 0.072,
  'almost never': 0.029,
  never: 0.01,
} as const

export type FrequencyWord = keyof typeof frequencyShares

export const frequencyWords = Object.keys(frequencyShares) as [FrequencyWord, ...FrequencyWord[]]

/** Shares of one check in one profile may add up to at most this before the compiler refuses them. */
export const LARGEST_SHARE_SUM = 1.3

/** Least share left to an answer that the profile does not mention. */
const LEAST_SHARE = 0.01

/**
 * P(answer | problem) for each answer of one check, from the words of the profile.
 * What is left of 1 goes in equal parts to the answers without a word (never less than 1 % each); the whole then sums to 1.
 * @param words the frequency word of each answer in order, or null where the profile does not mention it
 */
export function sharesFromWords(words: readonly (FrequencyWord | null)[]): Float64Array {
  const shares = new Float64Array(words.length)
  let named = 0
  let unnamed = 0
  for (const word of words) {
    if (word === null) unnamed += 1
    else named += frequencyShares[word]
  }
  const rest = unnamed === 0 ? 0 : Math.max(LEAST_SHARE, (1 - named) / unnamed)
  let sum = 0
  words.forEach((word, answer) => {
    const share = word === null ? rest : frequencyShares[word]
    shares[answer] = share
    sum += share
  })
  for (let answer = 0; answer < shares.length; answer++) shares[answer] = (shares[answer] ?? 0) / sum
  return shares
}
