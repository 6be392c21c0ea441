import type { Guide, Host } from './guide.js'

/** True for a host that is no plant but a job in the garden: every problem in its tree is one. */
export function isJobHost({ problems }: Pick<Guide, 'problems'>, host: Pick<Host, 'problems'>): boolean {
  return host.problems.length > 0 && host.problems.every((problem) => problems[problem]?.kind === 'garden job')
}
