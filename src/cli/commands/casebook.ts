import { Command } from 'commander'
import { keptCases } from '../../desk/index.js'
import { notice, print } from '../terminal.js'
import { withStore } from '../with-store.js'

/** `frondline casebook`: the settled cases that specialists kept, ready for trees/casebook. */
export function casebookCommand(): Command {
  return new Command('casebook')
    .description('Print the settled cases that specialists kept, as a file for trees/casebook.')
    .addHelpText('after', '\nfrondline casebook > trees/casebook/from-tickets.yaml, then frondline proof and frondline replay.')
    .action(() => withStore(async (store) => {
      const { yaml } = await keptCases(store)
      if (yaml === '') notice('No case has been kept yet.')
      else print(yaml.trimEnd())
    }))
}
