import { remember } from './languages/remember.js'

/**
 * Brings the forms of one word together: `leaves`, `leafs` and `leaf`; `spotted`, `spotty` and `spots`.
 * A light English suffix stripper, not a dictionary: the stem need not be a word, it only has to agree.
 */
export const stem = remember(reckonStem)

function reckonStem(word: string): string {
  const whole = IRREGULAR.get(word)
  if (whole !== undefined) return whole
  if (word.length < 4) return word
  return undouble(stripSuffix(singular(word)))
}

/** The singular of a noun, for plant names, which must not lose more than their plural. */
export function singular(word: string): string {
  const whole = IRREGULAR.get(word)
  if (whole !== undefined) return whole
  if (word.length < 4) return word
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`
  if (word.endsWith('ys') && word.length > 4 && !/[aeiou]ys$/u.test(word)) return word.slice(0, -1)
  if (/(?:ch|sh|x|z|ss|o|us)es$/u.test(word)) return word.slice(0, -2)
  if (word.endsWith('s') && !/(?:ss|us|is)$/u.test(word)) return word.slice(0, -1)
  return word
}

function stripSuffix(word: string): string {
  for (const suffix of SUFFIXES) {
    if (word.endsWith(suffix) && word.length - suffix.length >= (suffix === 'ly' ? 4 : 3) && /[aeiouy]/u.test(word.slice(0, -suffix.length))) {
      return stripE(word.slice(0, -suffix.length))
    }
  }
  return stripE(word)
}

function stripE(word: string): string {
  const bare = word.length > 3 && word.endsWith('e') ? word.slice(0, -1) : word
  return bare.length > 3 && bare.endsWith('i') ? bare.slice(0, -1) : bare
}

function undouble(word: string): string {
  return /([bdfgklmnprt])\1$/u.test(word) ? word.slice(0, -1) : word
}

const SUFFIXES = ['ishly', 'ingly', 'iness', 'ening', 'ened', 'ness', 'less', 'ish', 'ing', 'ily', 'ied', 'ed', 'ly', 'en', 'ey', 'y']

const IRREGULAR: ReadonlyMap<string, string> = new Map([
  ['leaves', 'leaf'], ['leafs', 'leaf'], ['leafes', 'leaf'], ['leave', 'leaf'], ['leeves', 'leaf'], ['leavs', 'leaf'], ['leaf', 'leaf'],
  ['foliage', 'leaf'], ['potatos', 'potato'], ['tomatos', 'tomato'], ['toms', 'tomato'],
  ['ate', 'eat'], ['eaten', 'eat'], ['eats', 'eat'], ['died', 'die'], ['dying', 'die'], ['dead', 'die'], ['dieing', 'die'], ['dies', 'die'],
  ['rotten', 'rot'], ['rotting', 'rot'], ['rots', 'rot'], ['fallen', 'fall'], ['fell', 'fall'],
  ['grey', 'gray'], ['greyish', 'gray'], ['mould', 'mold'], ['mouldy', 'mold'], ['moulds', 'mold'], ['moldy', 'mold'],
  ['holly', 'holly'], ['chillies', 'chilli'], ['mice', 'mouse'], ['gone', 'go'], ['went', 'go'], ['goes', 'go'], ['broken', 'break'], ['broke', 'break'],
  ['grown', 'grow'], ['grew', 'grow'], ['wilty', 'wilt'], ['bitten', 'bite'], ['bit', 'bite'], ['flies', 'fly'], ['shrivelled', 'shrivel'], ['curled', 'curl'],
  ['colour', 'color'], ['coloured', 'color'], ['discoloured', 'discolor'], ['nibbled', 'nibbl'], ['tunnels', 'tunnel'], ['fuzz', 'fuzz'], ['fuzzy', 'fuzz'], ['fluffy', 'fluf'],
  // "Hardly any" is not hard.
  ['hardly', 'hardly'],
  // Not to be one with "strip", nor with "budgie".
  ['stripe', 'stripe'], ['stripes', 'stripe'], ['striped', 'stripe'], ['stripy', 'stripe'], ['stripey', 'stripe'], ['striping', 'stripe'],
  ['budge', 'budge'], ['budges', 'budge'], ['budged', 'budge'], ['budging', 'budge'],
])
