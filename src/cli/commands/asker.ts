import { randomBytes } from 'node:crypto'
import { Command, Option } from 'commander'
import { CaseLink } from '../../../shared/index.js'
import { eraseAsker, exportAsker, type PrivacyRoom } from '../../desk/index.js'
import { keysInUse } from '../../http/index.js'
import { print } from '../terminal.js'
import { withStore } from '../with-store.js'

const asker = (): Option => new Option('--asker <link>', 'the link of their case: the whole address, or what stands after # in it').makeOptionMandatory()

/** `frondline export`: everything kept about one asker. Works while the service runs. */
export function exportCommand(): Command {
  return new Command('export')
    .description('Print everything that is kept about one asker, as JSON: for an asker who wants to know.')
    .addOption(asker())
    .action(({ asker: link }: { asker: string }) => withRoom(async (room) => {
      const found = await exportAsker(room, linkIn(link))
      if (found === null) throw new Error('No case has this link. It may have been erased.')
      print(JSON.stringify(found, null, 2))
    }))
}

/** `frondline erase`: takes everything away that one asker left. Works while the service runs. */
export function eraseCommand(): Command {
  return new Command('erase')
    .description('Erase everything that one asker wrote, sent and left, and what was written back to them.')
    .addOption(asker())
    .option('--yes', 'do it; without this, only what would be erased is said')
    .addHelpText('after', '\nWhat was seen on the plant stays, with no one to whom it belongs. Not reached: backups made before, mail already sent,'
      + '\nand cases already copied into trees/casebook. The pictures go within about an hour while the service runs.')
    .action(({ asker: link, yes }: { asker: string; yes?: boolean }) => withRoom(async (room) => {
      if (yes !== true) {
        if (await exportAsker(room, linkIn(link)) === null) throw new Error('No case has this link. It may have been erased.')
        print('Everything this asker wrote, their contact details and photos would be erased, and the link would be dead.',
          'See it first with: frondline export --asker LINK', 'Do it with --yes. It cannot be undone.')
        return
      }
      if (!await eraseAsker(room, linkIn(link))) throw new Error('No case has this link. It may have been erased.')
      print('Erased. The link is dead.')
    }))
}

/** The link in whatever was copied: the address of the case's page, or the link alone. */
function linkIn(text: string): string {
  const last = text.trim().split(/[#/]/).at(-1) ?? ''
  const read = CaseLink.safeParse(last)
  if (!read.success) throw new Error('This is no link of a case. Copy the whole address of the case\'s page.')
  return read.data
}

function withRoom(work: (room: PrivacyRoom) => Promise<void>): Promise<void> {
  return withStore(async ({ db }, settings) => {
    await work({ db, keys: await keysInUse(settings), now: () => new Date(), randomBytes: (count) => randomBytes(count) })
  })
}
