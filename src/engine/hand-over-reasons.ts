/** Why a case is handed over where the reckoning says so and not the tree, in English. */
export const handOverReasons = {
  'several causes fit': 'What you have seen fits more than one cause, and we do not want to guess.',
  'out of sight': 'It is hard to see enough just now, and that is quite all right. A specialist can often tell from a few photos.',
} as const

export type HandOverReason = keyof typeof handOverReasons

/** Which of the reckoning's reasons this is, or null where the tree's author wrote it. */
export function reckonedReason(because: string): HandOverReason | null {
  const names = Object.keys(handOverReasons) as HandOverReason[]
  return names.find((name) => handOverReasons[name] === because) ?? null
}
