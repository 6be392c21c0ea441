import { Command } from 'commander'
import { reportHost, type HostReport, seededRandom } from '../../engine/index.js'
import { closestNames, MISREAD_RATE, suggest } from '../../guide/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { notice, print } from '../terminal.js'

/** `frondline report`: how each host's tree and profiles do on cases made from the profiles. */
export function reportCommand(): Command {
  return new Command('report')
    .description('Play made-up cases of each host and report checks asked, accuracy, calibration and what to mend.')
    .argument('[host]', 'one host only')
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--cases <number>', 'cases to judge for each host', '2000')
    .option('--seed <number>', 'seed of the made-up cases', '1')
    .option('--json', 'as one JSON list')
    .action(async (only: string | undefined, options: { trees: string; cases: string; seed: string; json?: boolean }) => {
      const guide = await requireGuide(options.trees)
      const hosts = guide.hosts.filter(({ id }) => only === undefined || id === only)
      const cases = Number(options.cases)
      if (hosts.length === 0 || !Number.isInteger(cases) || cases < 1) {
        notice(hosts.length === 0 ? `There is no host "${only ?? ''}". ${suggest(closestNames(only ?? '', guide.hostNumbers.keys()))}`.trim() : `--cases is "${options.cases}". Expected a whole number of at least 1.`)
        process.exitCode = 1
        return
      }
      const reports: HostReport[] = []
      for (const host of hosts) {
        const report = reportHost(guide, host, cases, seededRandom(Number(options.seed)))
        reports.push(report)
        if (options.json !== true) print(...lines(report), '')
      }
      if (options.json === true) print(JSON.stringify(reports, null, 2))
      else print('Checks: mean a case. "At least" is the entropy of the problems over log2 of the most answers of a check: no tree tells every problem for sure with fewer.')
    })
}

/** Above this many times the bound the report says why. */
const MOST_TIMES = 1.5

/** Below this share of right first guesses the report says how many of the others are *something not listed here*. */
const LEAST_RIGHT = 0.9

function lines(report: HostReport): string[] {
  const share = (value: number): string => `${(100 * value).toFixed(1)} %`
  const ratio = report.engineChecks / report.leastChecks
  return [
    `${report.host}: ${report.problems} problems, ${report.checks} checks, ${report.cases} made-up cases`,
    ...(report.passedOn === 0 ? [] : [`  passed on         ${share(report.passedOn)} of all made, to another host's tree; the rest is about those that stayed`]),
    `  checks asked      tree ${report.treeChecks.toFixed(2)}   engine ${report.engineChecks.toFixed(2)}   at least ${report.leastChecks.toFixed(2)} (${ratio.toFixed(2)} times; longest case ${report.longest})`,
    ...(ratio <= MOST_TIMES ? [] : [`  why more          a check asked tells ${report.bitsACheck.toFixed(2)} bits on average: plants with one trouble do not all look alike, and ${(100 * MISREAD_RATE).toFixed(0)} % of answers are taken to be misread`]),
    `  right             tree ${share(report.treeRight)}   engine's first ${share(report.accuracy)}   when concluded ${share(report.rightWhenConcluded)} of ${share(report.concluded)}   wrong and sure ${share(report.wrongAndSure)}`,
    ...(report.accuracy >= LEAST_RIGHT ? [] : [`  why less right    in ${share(report.notListedLeads)} of cases "something not listed here" leads at the end: no made-up case is that, but many a caller's is`]),
    `  calibration       gap ${share(report.calibrationError)}   Brier ${report.brier.toFixed(3)}   log loss ${report.logLoss.toFixed(3)}`,
    `  claimed → right   ${report.bins.map(({ claimed, right, count }) => `${share(claimed)} → ${share(right)} (${count})`).join(', ')}`,
    ...(report.earnsMost === null ? [] : [`  tells most        ${report.earnsMost.check} (${report.earnsMost.bitsACase.toFixed(2)} bits a case)`]),
    ...(report.earnsNothing.length === 0 ? [] : [`  tells nothing     ${report.earnsNothing.join(', ')}`]),
    ...(report.inseparable.length === 0 ? [] : [`  not told apart    ${report.inseparable.map(([one, other]) => `${one} / ${other}`).join(', ')}`]),
    `  weakest           ${report.weakest.map(({ problem, right, cases }) => `${problem} ${share(right)} of ${cases}`).join(', ')}`,
    ...(report.longest > 8 ? ['  too long          a case asks more than 8 checks'] : []),
  ]
}
