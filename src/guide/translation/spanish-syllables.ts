/** Vowels that never glide: each is the heart of a syllable. A written accent makes i and u strong. */
const STRONG = 'aeoáéíóú'
const WEAK = 'iuü'

/**
 * Counts the syllables of a Spanish word by the rule of the Real Academia Española (Ortografía de la lengua española,
 * 2010, chapter on the syllable; from memory): every strong vowel and every accented i or u is one syllable; a weak
 * vowel beside a strong one, or two weak ones together, share one. The u of gue, gui and qu is silent; y is a vowel at
 * the end of a word; h between vowels does not count.
 * @returns at least 1 for a word with any letter or figure
 */
export function spanishSyllables(word: string): number {
  const plain = word.normalize('NFC').toLowerCase()
    .replace(/qu/gu, 'q').replace(/gu(?=[eéií])/gu, 'g').replace(/h/gu, '').replace(/y(?![\p{L}])/gu, 'i')
  let count = 0
  for (const run of plain.match(/[aeiouáéíóúü]+/gu) ?? []) {
    const strong = [...run].filter((vowel) => STRONG.includes(vowel)).length
    const weak = [...run].filter((vowel) => WEAK.includes(vowel)).length
    count += strong > 0 ? strong : Math.ceil(weak / 2)
  }
  return Math.max(1, count)
}
