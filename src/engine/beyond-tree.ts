import type { Check, Effort } from '../guide/index.js'
import type { CaseState } from './case-state.js'
import type { Finding } from './evidence.js'

/** Looks that cost a moment: nobody digs, cuts or waits for a case that is as good as settled, or handed over anyway. */
const EASY: readonly Effort[] = ['glance', 'hand lens']

/** Whether a look costs no more than a moment. */
export function isEasy({ effort }: Check): boolean {
  return EASY.includes(effort)
}

/** What was asked though the tree did not ask it. */
export function askedBeyondTree({ evidence, walk }: Pick<CaseState, 'evidence' | 'walk'>): Finding[] {
  const onThePath = new Set<string>(walk.path.map(({ finding }) => finding.check))
  return evidence.findings.filter(({ check, from }) => from === 'asked' && !onThePath.has(check))
}
