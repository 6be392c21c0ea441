import { Command } from 'commander'
import { recountSeason } from '../../desk/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { print } from '../terminal.js'
import { withStore } from '../with-store.js'

/** `frondline season`: what the service has counted of its season. Works while the service runs. */
export function seasonCommand(): Command {
  return new Command('season')
    .description('Look after what the service counts of its season. The store is the one of `people`.')
    .addCommand(new Command('recount')
      .description('Count every case anew with the guide as it is: after an update from a version that did not count, or a large change of the guide. Raises no notices.')
      .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
      .action(async ({ trees }: { trees: string }) => {
        const guide = await requireGuide(trees)
        await withStore(async ({ db }) => {
          const cases = await recountSeason({ db, mail: null, now: () => new Date(), knowledge: () => ({ guide }) })
          print(`${cases} ${cases === 1 ? 'case' : 'cases'} counted anew.`)
        })
      }))
}
