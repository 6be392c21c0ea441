import { writeFile } from 'node:fs/promises'
import { Argument, Command } from 'commander'
import { readFolder, refreshFiles, suggest } from '../../guide/index.js'
import { DEFAULT_TREES, requireFolder } from '../guide-option.js'
import { notice, print } from '../terminal.js'

const LANGUAGE_TAG = /^[a-z]{2,3}(-[A-Za-z0-9]+)*$/

/** `frondline translate`: writes translation files, or brings them up to date with their originals. */
export function translateCommand(): Command {
  return new Command('translate')
    .description('Write the translation files of a host (with its problems and checks), the region or the red flags, or bring them up to date: what is there stays, what is missing is added with the English above it.')
    .addArgument(new Argument('<language>', 'language tag, such as es'))
    .addArgument(new Argument('<name>', 'a host such as tomato, region, red-flags, or one file such as checks/leaf-spots'))
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--checked', 'you have read every text against the English of today: none is out of date any more')
    .addHelpText('after', '\nExamples:\n  frondline translate es tomato\n  frondline translate es checks/leaf-spots --checked')
    .action(async (language: string, name: string, { trees, checked }: { trees: string; checked?: boolean }) => {
      if (!LANGUAGE_TAG.test(language)) {
        notice(`"${language}" is no language tag. Expected one such as es or pt-BR.`)
        process.exitCode = 1
        return
      }
      requireFolder(trees)
      const refreshed = refreshFiles(await readFolder(trees), language, name, { checked: checked === true })
      if ('unknown' in refreshed) {
        notice(`There is nothing to translate named "${refreshed.unknown}". Expected a host, region, red-flags, or a file such as checks/leaf-spots. ${suggest(refreshed.nearest)}`.trim())
        process.exitCode = 1
        return
      }
      for (const { path, text, isChanged, missing, outOfDate } of refreshed.files) {
        if (isChanged) await writeFile(path, text)
        print(`${isChanged ? 'written  ' : 'unchanged'}  ${path}  ${missing} missing, ${outOfDate} out of date`)
      }
    })
}
