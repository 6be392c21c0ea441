import type { CheckCard } from '../../../shared/index.js'

/** What the asker opened besides the step the service is at. */
export type Aside =
  | { readonly kind: 'line'; readonly check: CheckCard; readonly before: string | null }
  | { readonly kind: 'plant' }
  | { readonly kind: 'specialist' }
