/** What the asker will read, with what is needed to know whether it still suits the end that is chosen. */
export interface Letter {
  readonly text: string
  /** The guide's advice as it was put into the text; '' for none. */
  readonly putIn: string
  /** The end that the text was written for: a problem's name, 'not known' or 'not a plant problem'; '' before one is chosen. */
  readonly suits: string
  /** The text that stood here before the guide's advice took its place, to be brought back; '' for none. */
  readonly replaced: string
}

export const blankLetter: Letter = { text: '', putIn: '', suits: '', replaced: '' }

/**
 * The letter after another end was chosen. Advice that stands in it untouched gives way to the new end's (`advice`, '' for
 * an end without); what was written round it stays. A text that was written or changed by hand stays as it is: where it was for
 * another end, `isAtOdds` then says so, and a person decides.
 */
export function letterFollows(letter: Letter, end: string, advice: string): Letter {
  if (end === '' || end === letter.suits) return letter
  if (letter.text.trim() === '') return { ...letter, text: advice, putIn: advice, suits: end }
  if (letter.putIn !== '' && letter.text.includes(letter.putIn)) {
    return { ...letter, text: letter.text.replace(letter.putIn, () => advice).trim(), putIn: advice, suits: end }
  }
  return letter.suits === '' ? { ...letter, suits: end } : letter
}

/** True where the text was written for another end than the chosen one: it must not go out before a person has looked. */
export function isAtOdds({ text, suits }: Letter, end: string): boolean {
  return end !== '' && suits !== '' && suits !== end && text.trim() !== ''
}

/** The letter with nothing but the guide's advice. What was written by hand is kept aside, to be brought back. */
export function letterOfAdvice(letter: Letter, end: string, advice: string): Letter {
  return { text: advice, putIn: advice, suits: end, replaced: isByHand(letter) ? letter.text : letter.replaced }
}

/** The letter that was replaced by advice, brought back for the end that is chosen now; what was written since takes its place aside. */
export function letterBroughtBack(letter: Letter, end: string): Letter {
  return { text: letter.replaced, putIn: '', suits: end, replaced: isByHand(letter) ? letter.text : '' }
}

function isByHand({ text, putIn }: Letter): boolean {
  return text.trim() !== '' && text !== putIn
}
