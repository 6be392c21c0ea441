import type { Evidence } from './evidence.js'

/** Checks asked so far, each once. */
export function countAsked(findings: Evidence['findings']): number {
  return findings.filter(({ from }) => from === 'asked').length
}

/** Checks asked so far; one that was looked at twice counts twice. */
export function countLooks(findings: Evidence['findings']): number {
  return countAsked(findings) + findings.filter(({ from, again }) => from === 'asked' && again === true).length
}
