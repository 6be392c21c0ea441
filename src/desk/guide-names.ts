import type { Check, Guide, Host, Problem, RedFlag, TreeNode } from '../guide/index.js'
import { CANT_LOOK, NOT_SURE } from '../guide/index.js'

/** The check of this name, or null. */
export function checkNamed(guide: Guide, name: string): Check | null {
  return at(guide.checks, guide.checkNumbers.get(name))
}

/** The problem of this name, or null. */
export function problemNamed(guide: Guide, name: string): Problem | null {
  return at(guide.problems, guide.problemNumbers.get(name))
}

/** The host of this name, or null. */
export function hostNamed(guide: Guide, name: string): Host | null {
  return at(guide.hosts, guide.hostNumbers.get(name))
}

/** The red flag of this name, or null. */
export function redFlagNamed(guide: Guide, name: string): RedFlag | null {
  return at(guide.redFlags, guide.redFlagNumbers.get(name))
}

/** The node of this name in a host's tree, or null. */
export function nodeNamed(host: Host, name: string): TreeNode | null {
  return host.nodes.find((node) => node.name === name) ?? null
}

/** Whether a check takes this answer: one of its own, *not sure* or *can't look now*. */
export function takesAnswer(check: Check, answer: string): boolean {
  return answer === NOT_SURE || answer === CANT_LOOK || check.answers.some(({ label }) => label === answer)
}

/** The words shown for an answer of a check; its label where it is none of the check's own. */
export function answerShown(check: Check, answer: string): string {
  return check.answers.find(({ label }) => label === answer)?.shown ?? answer
}

function at<T>(list: readonly T[], number: number | undefined): T | null {
  return number === undefined ? null : list[number] ?? null
}
