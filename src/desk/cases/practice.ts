import type { PracticeCall, PracticeTruth } from '../../../shared/index.js'
import type { Guide, WorkedCase } from '../../guide/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'

/**
 * A worked case to practise on, drawn from those not done yet; from all of them once every one is done.
 * @param done names of worked cases
 */
export function nextPractice(room: Pick<Room, 'knowledge' | 'randomBytes'>, done: readonly string[]): PracticeCall {
  const { casebook } = room.knowledge().guide
  const past = new Set(done)
  const fresh = casebook.filter(({ id }) => !past.has(id))
  const open = fresh.length === 0 ? casebook : fresh
  // 32 random bits over a few hundred cases: the first are favoured by less than one in a million.
  const draw = Buffer.from(room.randomBytes(4)).readUInt32BE(0)
  const worked = open[draw % Math.max(1, open.length)]
  if (worked === undefined) throw new DeskFault('PRACTICE_NOT_FOUND')
  return { practice: worked.id, words: worked.words, district: worked.district, on: worked.on, left: open.length }
}

/** How a worked case truly is. */
export function practiceTruth({ knowledge }: Pick<Room, 'knowledge'>, practice: string): PracticeTruth {
  const { guide } = knowledge()
  const worked = workedCase(guide, practice)
  return {
    practice, hostName: worked.host === null ? null : guide.hosts[worked.host]?.name ?? null,
    answers: [...worked.findings].flatMap(([check, answer]) => {
      const id = guide.checks[check]?.id
      return id === undefined ? [] : [{ check: id, answer }]
    }),
    ends: endOf(guide, worked),
  }
}

/** The worked case of this name, or a fault. */
export function workedCase(guide: Guide, practice: string): WorkedCase {
  const worked = guide.casebook.find(({ id }) => id === practice)
  if (worked === undefined) throw new DeskFault('PRACTICE_NOT_FOUND')
  return worked
}

function endOf(guide: Guide, { ends, alsoRight }: WorkedCase): PracticeTruth['ends'] {
  switch (ends.kind) {
    case 'hand over': return { kind: 'hand over' }
    case 'red flag': {
      const flag = guide.redFlags[ends.redFlag]
      if (flag === undefined) throw new Error(`The guide has no red flag ${ends.redFlag}.`)
      return { kind: 'red flag', redFlag: flag.id, title: flag.title }
    }
    case 'problem': return {
      kind: 'problem', ...named(guide, ends.problem), alsoRight: alsoRight.map((problem) => named(guide, problem)),
    }
  }
}

function named(guide: Guide, number: number): { problem: string; name: string } {
  const problem = guide.problems[number]
  if (problem === undefined) throw new Error(`The guide has no problem ${number}.`)
  return { problem: problem.id, name: problem.name }
}
