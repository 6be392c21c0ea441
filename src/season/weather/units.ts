/** Measures of weather in other units. */

/** °C of a temperature in °F. Exact by definition: 32 °F is 0 °C, 1.8 °F are 1 °C. */
export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8
}

/** Degree days in °F of degree days in °C: only the size of a degree counts, not where its scale begins. */
export function fahrenheitDaysOf(celsiusDays: number): number {
  return celsiusDays * 1.8
}

/** Millimetres in an inch; exact by definition (international inch, 1959). */
export const MM_PER_INCH = 25.4
