import type { CaseChangeBodies } from '../wire/case-service.js'

/** A change to the case as the screens state it; the session adds the revision. */
export type CaseChange = {
  [Path in keyof CaseChangeBodies]: { readonly path: Path; readonly body: Omit<CaseChangeBodies[Path], 'revision'> }
}[keyof CaseChangeBodies]
