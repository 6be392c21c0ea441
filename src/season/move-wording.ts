import type { MoveReason } from './move.js'

type Values = MoveReason['values']

/** How one language says why a problem is more or less likely. */
export interface MoveWording {
  /** The whole line about reasons that are already listed. */
  line(isMoreLikely: boolean, reasons: string): string
  /** Stands before the last of several. */
  readonly lastAnd: string
  /** What presence and reports say, by code. */
  readonly reasons: Readonly<Record<string, (values: Values) => string>>
  /** What the weather says, by code; {name} stands for a value. */
  readonly weather: Readonly<Record<string, string>>
}
