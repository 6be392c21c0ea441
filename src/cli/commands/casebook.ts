import { Command } from 'commander'
import { keptCases } from '../../desk/index.js'
import { readSettings } from '../../http/index.js'
import { openStore } from '../../store/index.js'
import { notice, print } from '../terminal.js'

/** `frondline casebook`: the settled cases that specialists kept, ready for trees/casebook. */
export function casebookCommand(): Command {
  return new Command('casebook')
    .description('Print the settled cases that specialists kept, as a file for trees/casebook.')
    .addHelpText('after', '\nfrondline casebook > trees/casebook/from-tickets.yaml, then frondline proof and frondline replay.')
    .action(async () => {
      const { home, databaseUrl } = readSettings(process.env)
      const store = await openStore({ home, databaseUrl })
      try {
        const { yaml } = await keptCases(store)
        if (yaml === '') notice('No case has been kept yet.')
        else print(yaml.trimEnd())
      } finally {
        await store.close()
      }
    })
}
