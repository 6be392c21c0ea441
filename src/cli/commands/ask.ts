import { Command, InvalidArgumentError } from 'commander'
import { z } from 'zod'
import { likelyLine, sprayInWords } from '../../desk/index.js'
import { type Evidence, type Likely, readCase, type Reading, withFinding } from '../../engine/index.js'
import { CANT_LOOK, type Guide, type HostId, NOT_SURE } from '../../guide/index.js'
import { buildMatchIndex, findingsFor, type MatchIndex, matchQuestion } from '../../match/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { openLinePrompt } from '../line-prompt.js'
import { print, today } from '../terminal.js'

/** `frondline ask`: walks one case in the terminal, from the question to the advice or the hand-over. Nothing is kept. */
export function askCommand(): Command {
  return new Command('ask')
    .description('Walk one case in the terminal: a question in your own words, then the checks, then the advice. Nothing is kept.')
    .argument('[words...]', 'the question; asked for when left out')
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--on <date>', 'date of the question, like 2026-05-14', isoDate, today())
    .addHelpText('after', '\nAt each check type the number of an answer, n for not sure, c for can\'t look now, b to change the last answer, q to stop.')
    .action(async (words: string[], options: { trees: string; on: string }) => {
      const guide = await requireGuide(options.trees)
      const lines = openLinePrompt(process.stdin, process.stdout)
      try {
        await walk(guide, buildMatchIndex(guide), words.join(' '), options.on, async (text) => {
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

async function walk(guide: Guide, index: MatchIndex, given: string, on: string, prompt: (text: string) => Promise<string>): Promise<void> {
  const words = given !== '' ? given : await prompt('What is wrong, in your own words?\n> ')
  const matched = matchQuestion(index, words)
  let evidence: Evidence = { redFlags: matched.redFlags.map(({ redFlag }) => redFlag), carriedOn: false, start: null, findings: [] }
  const offers = [
    ...matched.entries.slice(0, 3).map((entry) => ({
      host: entry.host, node: entry.node, label: `${nameOf(guide, entry.host)}: ${entry.phrase}`,
    })),
    ...matched.hosts.slice(0, 3).map(({ host }) => ({ host, node: null, label: `${nameOf(guide, host)}: something else` })),
  ]
  for (;;) {
    const reading = readCase(guide, evidence, { on, district: null })
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
        showEnd(guide, reading)
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

function showEnd(guide: Guide, reading: Reading): void {
  const { step, differential } = reading
  if (step.kind === 'conclude') {
    const problem = guide.problems[guide.problemNumbers.get(step.problem) ?? -1]
    const likely = differential.find((one) => one.problem === step.problem)
    if (problem === undefined) return
    const list = (title: string, lines: readonly string[]): string[] => (lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  - ${line}`)])
    print(
      '', problem.advice.bottomLine, '', `Most likely: ${problem.name} (${percent(likely?.probability ?? 0)}). ${problem.what}`,
      ...list('Why', likely === undefined ? [] : reasonsOf(guide, likely)),
      ...list('Do now', problem.advice.doNow), ...list('Not worth doing', problem.advice.notWorthDoing),
      ...list('Next year', problem.advice.nextYear), ...list('Spray', [sprayInWords(problem.advice.spray)]), ...list('Take care', problem.cautions),
      ...(problem.watch === null ? [] : ['', `To be reported: ${problem.watch.escalate}`]),
    )
  } else if (step.kind === 'hand-over') {
    print('', `${step.because} A specialist should see this.`, '', 'So far it could be:')
  }
  print(...differential.slice(0, 3).map(({ problem, probability }) =>
    `  ${percent(probability).padStart(5)}  ${problem === null ? 'something not listed here' : guide.problems[guide.problemNumbers.get(problem) ?? -1]?.name ?? problem}`))
}

/** The findings for and against, in plain words. */
function reasonsOf(guide: Guide, likely: Likely): string[] {
  const line = likelyLine(guide, likely)
  const plain = (side: string, { ask, answer, seen }: typeof line.for[number]): string =>
    `${side}: ${ask} ${answer}${seen === null ? '' : ` (${seen} seen with it)`}`
  return [...line.for.map((reason) => plain('for', reason)), ...line.against.map((reason) => plain('against', reason))]
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
