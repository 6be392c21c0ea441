import { buildGuide } from './build.js'
import type { GuideError } from './guide-error.js'
import type { Guide } from './guide.js'
import type { Report } from './parse.js'
import { readFiles } from './read-files.js'
import { RuleContext } from './rule-context.js'
import { errorRules, warningRules } from './rules/index.js'
import { lineAndColumn, type SourceFile } from './source-file.js'

export interface Compiled {
  /** The guide, or null when there is any error. */
  readonly guide: Guide | null
  /** Errors and warnings, in the order of files and lines. */
  readonly errors: readonly GuideError[]
  readonly warnings: readonly GuideError[]
}

/** More errors than this are not listed: the first ones usually explain the rest. */
const MOST_ERRORS = 500

/**
 * The whole pipeline: parse → shape → link → rules → build. Never throws for bad files: every mistake becomes an error with its place.
 * A file that does not parse or fit yields its own errors, and the others are still checked.
 * @param files all files of the guide
 * @param today ISO date, for the age of reviews
 */
export function compileGuide(files: readonly SourceFile[], { today }: { readonly today: string }): Compiled {
  const reported: GuideError[] = []
  const report: Report = (error) => {
    if (reported.length < MOST_ERRORS) reported.push(error)
  }
  const linked = readFiles(files, report)
  const context = new RuleContext(linked, today, report)
  for (const rule of errorRules) rule(context)
  const isSound = !reported.some(({ severity }) => severity === 'error')
  if (isSound) for (const rule of warningRules) rule(context)
  reported.sort(byPlace)
  return {
    guide: isSound && linked.region !== null ? buildGuide(linked, linked.region) : null,
    errors: reported.filter(({ severity }) => severity === 'error'),
    warnings: reported.filter(({ severity }) => severity === 'warning'),
  }
}

function byPlace(a: GuideError, b: GuideError): number {
  const [one, other] = [a.at[0], b.at[0]]
  if (one.file.path !== other.file.path) return one.file.path < other.file.path ? -1 : 1
  return lineAndColumn(one).line - lineAndColumn(other).line || one.start - other.start
}
