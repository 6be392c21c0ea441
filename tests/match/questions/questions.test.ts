import { describe, expect, it } from 'vitest'
import { isJobHost } from '../../../src/guide/index.js'
import { wholeGuide } from '../../whole-guide.js'
import { fnv1a, isHeldBack, type Question, readQuestions, readSplit } from './read-questions.js'

const guide = await wholeGuide()
const questions = await readQuestions()
const answersOf = new Map<string, readonly string[]>(guide.checks.map((check) => [check.id, check.answers.map(({ label }) => label)]))
const problemIds = new Set<string>(guide.problems.map(({ id }) => id))
const hostIds = new Set<string>(guide.hosts.map(({ id }) => id))
const redFlagIds = new Set<string>(guide.redFlags.map(({ id }) => id))
const squeezed = (text: string): string => text.toLowerCase().replace(/\s+/g, ' ').trim()

describe('the development questions', () => {
  it('number at least 1,500, eight or more for every host of the guide that a person can name', () => {
    expect(questions.length).toBeGreaterThanOrEqual(1_500)
    // A job has no name of its own: it is asked for beside some plant, and counts by what it leads to.
    const jobs = new Map(guide.hosts.filter((host) => isJobHost(guide, host)).map(({ id, problems }) => [id as string, new Set<string>([...problems].map((problem) => guide.problems[problem]?.id ?? ''))]))
    const isAbout = (host: string, one: Question): boolean => jobs.get(host) === undefined ? one.host === host : one.problems.some((problem) => jobs.get(host)?.has(problem))
    const few = [...hostIds].filter((host) => host !== 'unknown-plant' && questions.filter((one) => isAbout(host, one)).length < 8)
    expect(few).toEqual([])
  })

  it('name only hosts, problems and red flags that the guide has', () => {
    const unknown = questions.flatMap(({ host, problems, redFlags, redFlagsAllowed = [] }) => [
      ...(host === null || hostIds.has(host) ? [] : [host]),
      ...problems.filter((id) => !problemIds.has(id)),
      ...[...redFlags, ...redFlagsAllowed].filter((id) => !redFlagIds.has(id)),
    ])
    expect(unknown).toEqual([])
  })

  it('state only findings that are answers of their check', () => {
    const wrong = questions.flatMap(({ text, findings, alsoSaid = {} }) => [...Object.entries(findings), ...Object.entries(alsoSaid)]
      .filter(([check, answer]) => !(answersOf.get(check) ?? []).includes(answer))
      .map(([check, answer]) => `${check}: ${answer} (${text})`))
    expect(wrong).toEqual([])
  })

  it('list what is also said only for tuning questions, and never what is listed already', () => {
    const wrong = questions.filter(({ text, findings, alsoSaid = {} }) => Object.keys(alsoSaid).some((check) => check in findings || isHeldBack(text)))
    expect(wrong.map(({ text }) => text)).toEqual([])
  })

  it('ask nothing twice', () => {
    expect(new Set(questions.map(({ text }) => squeezed(text))).size).toBe(questions.length)
  })

  it('ask about every problem of the guide', () => {
    const asked = new Set(questions.flatMap(({ problems }) => problems))
    expect([...problemIds].filter((id) => !asked.has(id))).toEqual([])
  })

  it('expect nothing of a question that is out of scope', () => {
    const loaded = questions.filter((one) => one.outOfScope
      && (one.host !== null || one.problems.length + one.redFlags.length + Object.keys(one.findings).length > 0))
    expect(loaded).toEqual([])
  })
})

describe('the split of the development questions', () => {
  it('uses the published FNV-1a hash (test values: "", "a" and "foobar" in the reference code of Fowler, Noll and Vo, from memory)', () => {
    expect(['', 'a', 'foobar'].map((text) => fnv1a(text).toString(16))).toEqual(['811c9dc5', 'e40c292c', 'bf9cf968'])
  })

  it('is written down as the rule gives it', async () => {
    const split = await readSplit()
    expect(split.questions).toBe(questions.length)
    expect([...split.heldBack].sort()).toEqual(questions.map(({ text }) => text).filter(isHeldBack).sort())
  })
})
