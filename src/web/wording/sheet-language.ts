import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import { enSheet, type SheetWording } from './en-sheet.js'
import { useSpoken } from './language.js'

const SheetWordingContext = createContext<SheetWording | null>(null)
/** Other words for the same sheet, as for the helpline's own people. */
export const SheetWordingProvider = SheetWordingContext.Provider

/** The words of an open case's sheet, in the language this part of the screen speaks. */
export function useSheetWording(): SheetWording {
  const { sheet } = useSpoken()
  return useContext(SheetWordingContext) ?? sheet ?? enSheet
}
