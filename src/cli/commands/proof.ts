import { Argument, Command, Option } from 'commander'
import { closest, explain } from '../explain-code.js'
import { guideErrorAsJson, languageReport, loadGuide, printGuideError, readFolder } from '../../guide/index.js'
import { DEFAULT_TREES, requireFolder } from '../guide-option.js'
import { printLanguageReport } from '../language-report.js'
import { notice, print, today } from '../terminal.js'

/** `frondline proof`: validates and compiles the guide; ends with 1 when there is any error. */
export function proofCommand(): Command {
  return new Command('proof')
    .description('Read every file of the guide, report every mistake with file, line and column, and compile it.')
    .addArgument(new Argument('[dir]', 'folder that holds the guide').default(DEFAULT_TREES))
    .option('--json', 'print one JSON object with errors, warnings and the guide\'s hash')
    .option('--strict', 'end with 1 for warnings too')
    .addOption(new Option('--language <tag>', 'say how far the guide is translated into a language, and what is missing or out of date'))
    .addOption(new Option('--explain <code>', 'say what a code such as DEAD_END means and how to put it right'))
    .addHelpText('after', '\nExamples:\n  frondline proof\n  frondline proof trees --json\n  frondline proof --language es\n  frondline proof --explain DEAD_END')
    .action(async (folder: string, options: { json?: boolean; strict?: boolean; explain?: string; language?: string }) => {
      if (options.explain !== undefined) {
        const text = explain(options.explain)
        if (text === null) {
          notice(`There is no code "${options.explain}".${closest(options.explain)}`)
          process.exitCode = 1
        } else print(text)
        return
      }
      requireFolder(folder)
      if (options.language !== undefined) {
        const report = languageReport(await readFolder(folder), options.language)
        if (options.json === true) print(JSON.stringify(report, null, 2))
        else print(...printLanguageReport(report))
        return
      }
      const { guide, errors, warnings } = await loadGuide(folder, today())
      if (options.json === true) {
        print(JSON.stringify({
          ok: guide !== null, hash: guide?.hash ?? null,
          errors: errors.map(guideErrorAsJson), warnings: warnings.map(guideErrorAsJson),
        }, null, 2))
      } else {
        print(...[...errors, ...warnings].flatMap((error) => [printGuideError(error), '']))
        print(guide === null
          ? `${count(errors.length, 'error')}, so there is no guide.`
          : `${count(guide.hosts.length, 'host')}, ${count(guide.problems.length, 'problem')}, ${count(guide.checks.length, 'check')}, ${count(guide.casebook.length, 'worked case')}: no errors, ${count(warnings.length, 'warning')}. Guide ${guide.hash.slice(0, 12)}.`)
      }
      if (guide === null || (options.strict === true && warnings.length > 0)) process.exitCode = 1
    })
}

function count(number: number, thing: string): string {
  return `${number} ${thing}${number === 1 ? '' : 's'}`
}
