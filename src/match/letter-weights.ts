/** A sign of a letter, and the tokens it was first seen at. */
export interface LetterSign {
  readonly name: string
  readonly first: number
  readonly last: number
}

/** How much each sign of a letter speaks for a thing, in natural log odds. Fitted, never written by hand. */
export interface LetterWeights {
  readonly base: number
  readonly signs: ReadonlyMap<string, number>
}

/** How much each sign speaks for red flags of one level, and for which. */
export interface LevelWeights {
  readonly any: LetterWeights
  /** By red flag; among letters that raise one of this level. */
  readonly kinds: ReadonlyMap<string, LetterWeights>
}

/** An emergency is told in other words than what is only asked about, so each level has its own. */
export type DangerWeights = Readonly<Record<'emergency' | 'caution', LevelWeights>>

/** How much each sign speaks for a garden job rather than for trouble, and for which job. */
export interface JobWeights {
  readonly asks: LetterWeights
  /** By problem (jobs are kept as problems); among letters that ask for a job. */
  readonly kinds: ReadonlyMap<string, LetterWeights>
}
