/**
 * Brings the forms of one Spanish word together: `hojas`, `hoja` and `hojitas`; `se seca`, `secando` and `secos`. The word is
 * folded: no accents. The stem need not be a word, it only has to agree.
 *
 * Number and gender after the light stemmer for Spanish of J. Savoy ("Report on CLEF-2001 Experiments", 2001; its rules
 * from memory). The verb endings and diminutives that askers use most are our own: common practice, no source.
 */
export function spanishStem(word: string): string {
  const root = ROOTS.find(([pattern]) => pattern.test(word))
  if (root !== undefined) return root[1]
  if (word.length < 4) return word
  const bare = withoutNumberAndGender(word).replace(DIMINUTIVE, '')
  for (const ending of ENDINGS) {
    if (bare.endsWith(ending) && bare.length - ending.length >= SHORTEST) return softened(bare.slice(0, -ending.length))
  }
  return softened(bare)
}

/** The singular of a Spanish noun: `rosales` to `rosal`, `lechugas` to `lechuga`, `raices` to `raiz`. */
export function spanishSingular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || SINGULAR_AS_IT_IS.test(word)) return word
  if (word.endsWith('ces')) return `${word.slice(0, -3)}z`
  if (/[lrndjy]es$/u.test(word) && !E_NOUNS.has(word)) return word.slice(0, -2)
  return word.slice(0, -1)
}

function withoutNumberAndGender(word: string): string {
  const one = word.endsWith('s') && !SINGULAR_AS_IT_IS.test(word) ? spanishSingular(word) : word
  return one.length > 3 && /[aeo]$/u.test(one) ? one.slice(0, -1) : one
}

/** "Blanca" and "blanquito", "seca" and "seque": the same sound, spelled otherwise before e and i. */
function softened(stem: string): string {
  return stem.replace(/qu$/u, 'c').replace(/gu$/u, 'g').replace(/z$/u, 'c')
}

const SHORTEST = 3
/** "Gusanit-o", "pulgoncit-o"; it leaves at least four letters. */
const DIMINUTIVE = /(?<=^.{4,})c?it$/u
const SINGULAR_AS_IT_IS = /(?:[aiu]s$(?<=^(?:cactus|virus|ficus|hibiscus|crisis|dosis|lunes|martes|oasis|iris|gas|mas|tras|atras|detras)))|ss$/u
/** Nouns in -e whose plural looks like one of a word that ends with a consonant. */
const E_NOUNS: ReadonlySet<string> = new Set(['verdes', 'grandes', 'bordes', 'tardes', 'redes', 'paredes'])

/** Longest first. What is left after gender and number are off. */
const ENDINGS: readonly string[] = [
  'iendos', 'andos', 'iendol', 'andol', 'iendom', 'andom', 'ieron', 'aron', 'iend', 'yend', 'and', 'ecid', 'ient', 'aban', 'ian', 'aba', 'ecer', 'ecen', 'ad', 'id', 'an', 'en', 'ar', 'er', 'ir', 'io', 'ec',
].sort((a, b) => b.length - a.length)

/** Verbs that change inside, and words of one family that the endings do not bring together. */
const ROOTS: readonly (readonly [RegExp, string])[] = [
  [/^(?:flor|flores|florecita|florecitas|florcita|florcitas)$/u, 'flor'],
  [/^(?:pudr|podr(?!ia))/u, 'pudr'], [/^(?:muer[eto]|mur[io]|muri|morir)/u, 'muer'], [/^(?:ca(?:e|en|er|erse|ia|ian|ido|ida|idos|idas|yo|yeron|yendo|yendose)|caigan?)$/u, 'caer'],
  [/^(?:com(?:e|en|er|io|ido|ida|idas|idos|ieron|iendo|iendose|erse|elos|e[sr]las)|comia|comian|comidas?)$/u, 'comer'],
  [/^amarill|^amarile/u, 'amarill'], [/^blan[cq]/u, 'blanc'], [/^negr|^ennegr/u, 'negr'], [/^roj|^enroj/u, 'roj'], [/^marchit/u, 'marchit'],
  [/^podad?|^pod[eo]$/u, 'pod'], [/^muerd|^mord[ieo]|^mordid/u, 'muerd'], [/^pierd|^perd[ie]/u, 'pierd'], [/^florec|^florez|^floreci/u, 'florec'],
  [/^enroll|^enrosc|^enrul/u, 'enroll'], [/^madur/u, 'madur'], [/^crec|^crezc/u, 'crec'], [/^arrug/u, 'arrug'], [/^o?jas?$|^h?oj(?:a|as|ita|itas|illa|illas)$/u, 'hoj'],
  [/^(?:raiz|raices|raicitas?)$/u, 'raiz'], [/^(?:pulgon|pulgones|pulgoncitos?)$/u, 'pulgon'], [/^hongos?$|^onguitos?$|^honguitos?$/u, 'hong'],
]
