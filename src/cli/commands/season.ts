import { Command } from 'commander'
import { addDemonstration, recountSeason, removeDemonstration } from '../../desk/index.js'
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
    .addCommand(demonstrationCommand())
}

/** `frondline season demo`: a season made up for the demonstration region. */
function demonstrationCommand(): Command {
  return new Command('demo')
    .description('Two invented seasons of the demonstration region, to see the season page alive: reports, weather, words on watch problems. All of it is marked as invented.')
    .addCommand(new Command('add')
      .description('Make them up and add them. Refuses where the region is a real one.')
      .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
      .action(async ({ trees }: { trees: string }) => {
        const guide = await requireGuide(trees)
        await withStore(async ({ db }) => {
          const { reports, stations, presence } = await addDemonstration({ db, now: () => new Date(), knowledge: () => ({ guide }) })
          print(`Added two invented seasons: ${reports} reports, ${stations} weather stations, ${presence} words on watch problems.`, 'See them at /season. Take them away with: frondline season demo remove')
        })
      }))
    .addCommand(new Command('remove')
      .description('Take away everything that was made up, and nothing else.')
      .action(() => withStore(async ({ db }) => {
        print(await removeDemonstration({ db }) ? 'The invented seasons are gone.' : 'There were no invented seasons; nothing was changed.')
      })))
}
