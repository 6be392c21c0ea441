import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { enSheet, type SheetWording } from './en-sheet.js'
import { en, type Wording } from './en.js'
import { useWording } from './language.js'

/** The words of an open sheet, for every language of the first paint. */
const sheetWordings: ReadonlyMap<Wording, SheetWording> = new Map([[en, enSheet]])

const SheetWordingContext = createContext<SheetWording | null>(null)
/** Other words for the same sheet, as for the helpline's own people. */
export const SheetWordingProvider = SheetWordingContext.Provider

/** The words of an open case's sheet, in the language this part of the screen speaks. */
export function useSheetWording(): SheetWording {
  const language = useWording()
  return useContext(SheetWordingContext) ?? sheetWordings.get(language) ?? enSheet
}
