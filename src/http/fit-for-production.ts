import type { Guide } from '../guide/index.js'

/**
 * Why a guide must not be used with real people, or null when it may: an invented region gives advice for a place that
 * does not exist, and a card without its number leaves somebody in danger alone.
 */
export function whyNotFitForProduction({ region, redFlags }: Guide): string | null {
  if (region.demonstration) {
    return 'trees/region.yaml describes the demonstration region (demonstration: true). '
      + 'Write your own region with its real numbers and set demonstration: false before running in production.'
  }
  if (region.numbers.size === 0) {
    return 'trees/region.yaml has no numbers to call. Add them under "numbers" before running in production.'
  }
  const missing = [...new Set(redFlags.flatMap(({ card }) => card.call))].filter((name) => !region.numbers.has(name))
  if (missing.length === 0) return null
  return `trees/region.yaml has no number for ${missing.map((name) => `"${name}"`).join(', ')}, which red flags name. `
    + 'Add it under "numbers" before running in production.'
}
