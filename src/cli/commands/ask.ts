import { Command, InvalidArgumentError } from 'commander'
import { z } from 'zod'
import { likelyLine, plausibleHere, settingOf, sprayInWords } from '../../desk/index.js'
import { type Evidence, type Likely, readCase, type Reading, type Setting, withFinding } from '../../engine/index.js'
import { CANT_LOOK, type Guide, type HostId, NOT_SURE } from '../../guide/index.js'
import type { Plausible } from '../../season/index.js'
import { buildMatchIndex, findingsFor, type MatchIndex, matchQuestion } from '../../match/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { openLinePrompt } from '../line-prompt.js'
import { notice, print, today } from '../terminal.js'
import { withStore } from '../with-store.js'

/** `frondline ask`: walks one case in the terminal, from the question to the advice or the hand-over. Nothing is kept. */
export function askCommand(): Command {
  return new Command('ask')
    .description('Walk one case in the terminal: a question in your own words, then the checks, then the advice. Nothing is kept.')
    .argument('[words...]', 'the question; asked for when left out')
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--on <date>', 'date of the question, like 2026-05-14', isoDate, today())
    .option('--district <name>', 'district of the asker, like holt-fen: weighs what the store of the service says of its season (see people --help for where that is)')
    .addHelpText('after', '\nAt each check type the number of an answer, n for not sure, c for can\'t look now, b to change the last answer, q to stop.')
    .action(async (words: string[], options: { trees: string; on: string; district?: string }) => {
      const guide = await requireGuide(options.trees)
      const plausible = options.district === undefined ? [] : await seasonIn(guide, options.district, options.on)
      if (plausible === null) return
      const setting = settingOf(guide, { askedOn: options.on, district: options.district ?? null, plausible })
      const lines = openLinePrompt(process.stdin, process.stdout)
      try {
        await walk(guide, buildMatchIndex(guide), words.join(' '), { setting, plausible }, async (text) => {
          const line = await lines.ask(text)
          if (line === null) throw new InputEnded()
          return line
        })
      } catch (error) {
        if (!(error instanceof InputEnded)) throw error
        print('', 'Stopped.')
      } finally {
        lines.close()
      }
    })
}

class InputEnded extends Error {}

function isoDate(text: string): string {
  if (z.iso.date().safeParse(text).success) return text
  throw new InvalidArgumentError('Expected a date like 2026-05-14.')
}

/** What the season of the service's store says of a district, or null when there is none: that is said then. */
async function seasonIn(guide: Guide, district: string, on: string): Promise<readonly Plausible[] | null> {
  if (!guide.region.districts.has(district)) {
    notice(`The region has no district "${district}". Expected one of: ${[...guide.region.districts.keys()].join(', ')}.`)
    process.exitCode = 1
    return null
  }
  const found: { plausible: readonly Plausible[] | null } = { plausible: null }
  await withStore(async ({ db }) => { found.plausible = await plausibleHere({ db, now: () => new Date() }, guide, district, on) })
  return found.plausible
}

/** When and where it is asked, and what the season says there. */
interface Here {
  readonly setting: Setting
  readonly plausible: readonly Plausible[]
}

async function walk(guide: Guide, index: MatchIndex, given: string, here: Here, prompt: (text: string) => Promise<string>): Promise<void> {
  const words = given !== '' ? given : await prompt('What is wrong, in your own words?\n> ')
  const matched = matchQuestion(index, words)
  let evidence: Evidence = { redFlags: matched.redFlags.map(({ redFlag }) => redFlag), carriedOn: false, start: null, findings: [] }
  const offers = [
    ...matched.entries.slice(0, 3).map((entry) => ({
      host: entry.host, node: entry.node, label: `${nameOf(guide, entry.host)}: ${entry.phrase}`,
    })),
    ...matched.redFlags.flatMap(({ redFlag }) => guide.redFlags[guide.redFlagNumbers.get(redFlag) ?? -1]?.afterwards ?? [])
      .filter(({ host }, place, all) => all.findIndex((one) => one.host === host) === place)
      .map(({ host, node, offer }) => ({ host, node, label: offer })),
    ...matched.hosts.slice(0, 3).map(({ host }) => ({ host, node: null, label: `${nameOf(guide, host)}: something else` })),
  ]
  for (;;) {
    const reading = readCase(guide, evidence, here.setting)
    switch (reading.step.kind) {
      case 'red-flag': {
        const goOn = showCards(guide, reading)
        if (!goOn) return
        const answer = await prompt('Have you done this, and want to go on with the plant question? (y/n) ')
        if (!answer.toLowerCase().startsWith('y')) return
        evidence = { ...evidence, carriedOn: true }
        break
      }
      case 'place': {
        const all = offers.length > 0 ? offers : guide.hosts.map(({ id, name }) => ({ host: id, node: null, label: name }))
        print('', 'Which is nearest?', ...all.map(({ label }, place) => `  ${place + 1}  ${label}`))
        const chosen = all[Number(await prompt('> ')) - 1]
        if (chosen === undefined) print(`Expected a number from 1 to ${all.length}.`)
        else {
          // What the words already answer is not asked again.
          const said = findingsFor(index, words, chosen.host).map(({ check, answer }) => ({ check, answer, from: 'said' as const }))
          evidence = { ...evidence, start: { host: chosen.host, node: chosen.node }, findings: said }
          if (said.length > 0) print('', 'You said already:', ...said.map(({ check, answer }) => `  ${guide.checks[guide.checkNumbers.get(check) ?? -1]?.ask ?? check} ${answer}`))
        }
        break
      }
      case 'ask': {
        const check = guide.checks[guide.checkNumbers.get(reading.step.check) ?? -1]
        if (check === undefined) return
        if (reading.step.by === 'second look') {
          const { said, problem, usual } = reading.step.again
          print('', `You said "${said}". Most plants with ${problemName(guide, problem)} show "${usual}". Please look once more.`)
        }
        if (reading.step.by === 'last look') print('', 'A specialist should see this one. This look will help them.')
        print('', check.ask, `  ${check.how}`, ...check.answers.map(({ label }, place) => `  ${place + 1}  ${label}`), `  n  ${NOT_SURE}   c  ${CANT_LOOK}   b  change the last answer   q  stop`)
        const typed = (await prompt('> ')).trim().toLowerCase()
        if (typed === 'q') return
        if (typed === 'b') {
          evidence = { ...evidence, findings: evidence.findings.slice(0, -1) }
          break
        }
        const answer = typed === 'n' ? NOT_SURE : typed === 'c' ? CANT_LOOK : check.answers[Number(typed) - 1]?.label
        if (answer === undefined) {
          print(`Expected a number from 1 to ${check.answers.length}, n, c, b or q.`)
          break
        }
        evidence = { ...evidence, findings: withFinding(evidence.findings, { check: check.id, answer, from: 'asked' }) }
        break
      }
      case 'conclude':
      case 'hand-over':
        showEnd(guide, reading, here.plausible)
        return
    }
  }
}

/** Prints the red-flag cards; false when one of them ends the case. */
function showCards(guide: Guide, { cards }: Reading): boolean {
  let goOn = true
  for (const id of cards) {
    const card = guide.redFlags[guide.redFlagNumbers.get(id) ?? -1]
    if (card === undefined) continue
    print('', `! ${card.title}`, ...card.card.doNow.map((line) => `  - ${line}`), ...card.card.doNot.map(prohibition))
    for (const name of card.card.call) {
      const call = guide.region.numbers.get(name)
      if (call !== undefined) print(`  Call ${call.name}: ${call.number}`)
    }
    if (card.then === 'stop') goOn = false
  }
  return goOn
}

/** A line of what not to do. Most say so themselves; one that does not would say the opposite alone. */
function prohibition(line: string): string {
  return /^(do not|don[’']t|never|you must not|nobody|no one|nothing|avoid)\b/i.test(line.trim()) ? `  - ${line}` : `  - Do not: ${line}`
}

function showEnd(guide: Guide, reading: Reading, plausible: readonly Plausible[]): void {
  const { step, differential } = reading
  if (step.kind === 'conclude') {
    const problem = guide.problems[guide.problemNumbers.get(step.problem) ?? -1]
    const likely = differential.find((one) => one.problem === step.problem)
    if (problem === undefined) return
    const list = (title: string, lines: readonly string[]): string[] => (lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  - ${line}`)])
    print(
      '', problem.advice.bottomLine, '', `Most likely: ${problem.name} (${percent(likely?.probability ?? 0)}). ${problem.what}`,
      ...list('Why', likely === undefined ? [] : reasonsOf(guide, likely, plausible)),
      ...list('Do now', problem.advice.doNow), ...list('Not worth doing', problem.advice.notWorthDoing),
      ...list('Next year', problem.advice.nextYear), ...list('Spray', [sprayInWords(problem.advice.spray)]), ...list('Take care', problem.cautions),
      ...(problem.watch === null ? [] : ['', `To be reported: ${problem.watch.escalate}`]),
    )
  } else if (step.kind === 'hand-over') {
    print('', `${step.because} A specialist should see this.`, '', 'So far it could be:')
  }
  print(...differential.slice(0, 3).map((likely) => {
    const { problem, name, moved } = likelyLine(guide, likely, plausible)
    return `  ${percent(likely.probability).padStart(5)}  ${problem === null ? 'something not listed here' : name}${moved === undefined ? '' : `, ${moved.words}`}`
  }))
}

/** The findings for and against, in plain words. */
function reasonsOf(guide: Guide, likely: Likely, plausible: readonly Plausible[]): string[] {
  const line = likelyLine(guide, likely, plausible)
  const plain = (side: string, { ask, answer, seen }: typeof line.for[number]): string =>
    `${side}: ${ask} ${answer}${seen === null ? '' : ` (${seen} seen with it)`}`
  return [...line.for.map((reason) => plain('for', reason)), ...line.against.map((reason) => plain('against', reason)), ...(line.moved === undefined ? [] : [line.moved.words])]
}

function problemName(guide: Guide, problem: string): string {
  return guide.problems[guide.problemNumbers.get(problem) ?? -1]?.name.toLowerCase() ?? problem
}

function nameOf(guide: Guide, host: HostId): string {
  return guide.hosts[guide.hostNumbers.get(host) ?? -1]?.name ?? host
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}
