import { Command } from 'commander'
import { replayCase } from '../../desk/index.js'
import { buildMatchIndex } from '../../match/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { print } from '../terminal.js'

/** `frondline replay`: plays the casebook through the guide; ends with 1 when a case does not end as expected. */
export function replayCommand(): Command {
  return new Command('replay')
    .description('Play every case of the casebook through the guide and show which end as expected.')
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--only <text>', 'only cases whose name contains this')
    .option('--failed', 'show only the cases that did not end as expected')
    .option('--json', 'one JSON line a case, then one for the summary')
    .action(async (options: { trees: string; only?: string; failed?: boolean; json?: boolean }) => {
      const guide = await requireGuide(options.trees)
      const index = buildMatchIndex(guide)
      const worked = guide.casebook.filter(({ id }) => id.includes(options.only ?? ''))
      const results = worked.map((one) => replayCase(guide, index, one))
      const ok = results.filter((result) => result.ok).length
      const wrongAndSure = results.filter((result) => !result.ok && (result.probability ?? 0) >= 0.95).length
      const checks = results.map(({ asked }) => asked.length).sort((a, b) => a - b)
      const summary = {
        cases: results.length, ok, share: results.length === 0 ? null : ok / results.length, wrongAndSure,
        medianChecks: checks[Math.floor(checks.length / 2)] ?? null, guide: guide.hash,
      }
      for (const result of results) {
        if (options.failed === true && result.ok) continue
        if (options.json === true) print(JSON.stringify(result))
        else {
          const from = result.start === null ? 'no plant' : `${result.start.host}/${result.start.node ?? 'top'}`
          const sure = result.probability === null ? '' : ` (${Math.round(result.probability * 100)} %)`
          print(
            `${result.ok ? 'ok  ' : 'NOT '} ${result.case}  from ${from}`,
            ...result.asked.map(({ check, answer }) => `       ${check}: ${answer}`),
            `       concluded ${result.concluded}${sure}; expected ${result.expected}`,
          )
        }
      }
      if (options.json === true) print(JSON.stringify({ summary }))
      else if (results.length === 0) print('The casebook has no such cases.')
      else print(`${ok} of ${results.length} cases end as expected (${(100 * ok / results.length).toFixed(1)} %); ${wrongAndSure} wrong and sure; median ${summary.medianChecks ?? 0} checks.`)
      if (ok < results.length) process.exitCode = 1
    })
}
