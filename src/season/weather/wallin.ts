/**
 * Severity value of one humid spell for late blight of potato, 0 to 4: Wallin 1962, Am. Potato J. 39:306-312, as Krause,
 * Massie & Hyre 1975, Plant Dis. Reporter 59:95-98, use it. Hours from a university description of the modified version
 * (Baker, Kirk, Stein & Andresen 2002); its last column is continued as in the original, which is from memory.
 */
const BANDS: readonly { readonly toC: number; readonly hours: readonly number[] }[] = [
  { toC: 11.6, hours: [16, 19, 22, 25] },
  { toC: 15.0, hours: [13, 16, 19, 22] },
  { toC: 26.6, hours: [10, 13, 16, 19] },
]

/** Below it nothing counts, °C. */
const FROM_C = 7.2

/**
 * Severity value of a humid spell.
 * @param meanC mean temperature of the humid hours, °C
 * @param humidHours hours at 90 % relative humidity or more (80 % in the modified version)
 */
export function wallinSeverity(meanC: number, humidHours: number): number {
  if (meanC < FROM_C) return 0
  const band = BANDS.find(({ toC }) => meanC <= toC)
  return (band?.hours ?? []).filter((hours) => humidHours >= hours).length
}
