import type { CaseView } from '../../../shared/index.js'
import type { Desk } from '../../../src/desk/index.js'
import type { Guide } from '../../../src/guide/index.js'
import type { World } from '../desk-world.js'

/** Invented words that name no plant, answer no check and raise no card. */
const WORDS = 'it does not look well'

interface Told {
  readonly host: string
  readonly problem: string
  readonly district?: string
}

/** Opens a case and answers each check as most plants with the problem would, until the case asks no more. */
export async function toldCase({ desk, guide }: Pick<World, 'desk' | 'guide'>, { host, problem, district }: Told): Promise<CaseView> {
  const opened = await desk.openCase({ words: WORDS, ...(district === undefined ? {} : { district }) }, null)
  let view = await desk.settlePlace(opened.link, { revision: opened.revision, host, node: null }, null)
  for (let turn = 0; view.step.kind === 'ask' && turn < 30; turn++) {
    const { id } = view.step.check
    view = await desk.answerCheck(view.link, { revision: view.revision, check: id, answer: usualAnswer(guide, problem, id) }, null)
  }
  return view
}

/** A case that the guide concludes as the problem; fails when it does not. */
export async function concludedCase(world: Pick<World, 'desk' | 'guide'>, told: Told): Promise<CaseView> {
  const view = await toldCase(world, told)
  if (view.step.kind !== 'conclude' || view.step.card.problem !== told.problem) {
    throw new Error(`The case ends in ${view.step.kind}${view.step.kind === 'conclude' ? ` ${view.step.card.problem}` : ''}, not in ${told.problem}.`)
  }
  return view
}

/** Hands a case over and gives its ticket's number. */
export async function ticketOf(desk: Desk, view: CaseView, email?: string): Promise<string> {
  const before = new Set((await desk.listTickets({ state: 'any' })).tickets.map(({ ticket }) => ticket))
  await desk.handOver(view.link, { revision: view.revision, ...(email === undefined ? {} : { contact: { email } }) }, null)
  const [fresh] = (await desk.listTickets({ state: 'any' })).tickets.filter(({ ticket }) => !before.has(ticket))
  if (fresh === undefined) throw new Error('No ticket was opened.')
  return fresh.ticket
}

function usualAnswer(guide: Guide, problemName: string, checkName: string): string {
  const check = guide.checks[guide.checkNumbers.get(checkName) ?? -1]
  const shares = guide.problems[guide.problemNumbers.get(problemName) ?? -1]?.signs.find((sign) => sign.check === check?.number)?.shares
  if (check === undefined || shares === undefined) return 'not sure'
  return check.answers[shares.indexOf(Math.max(...shares))]?.label ?? 'not sure'
}
