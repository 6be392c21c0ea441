import type { MoveWording } from './move-wording.js'
import { reasonWords } from './weather/moves.js'

/** English for each reason. */
export const en: MoveWording = {
  line: (isMoreLikely, reasons) => `${isMoreLikely ? 'more' : 'less'} likely here now: ${reasons}`,
  lastAnd: ', and ',
  reasons: {
    'reports this week': ({ count, district }) => `${reports(count)} in ${district} this week`,
    'reports lately': ({ count, district, weeks }) => `${reports(count)} in ${district} in the last ${weeks} weeks`,
    presence: ({ state, district }) => {
      switch (state) {
        case 'not found': return `not found in ${district} so far`
        case 'found nearby': return `found near ${district}`
        case 'widespread': return `widespread in ${district}`
        default: return `known to be in ${district}`
      }
    },
    'presence beside': ({ district }) => `found in ${district}, next door`,
  },
  weather: reasonWords,
}

function reports(count: string | number | undefined): string {
  return count === 1 ? '1 report' : `${count ?? 0} reports`
}
