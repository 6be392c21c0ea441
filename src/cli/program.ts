import { Command } from 'commander'
import { askCommand } from './commands/ask.js'
import { backupCommand, restoreCommand } from './commands/backup.js'
import { eraseCommand, exportCommand } from './commands/asker.js'
import { casebookCommand } from './commands/casebook.js'
import { matchCommand } from './commands/match.js'
import { peopleCommand } from './commands/people.js'
import { proofCommand } from './commands/proof.js'
import { replayCommand } from './commands/replay.js'
import { reportCommand } from './commands/report.js'
import { seasonCommand } from './commands/season.js'
import { serveCommand } from './commands/serve.js'
import { suggestCommand } from './commands/suggest.js'
import { translateCommand } from './commands/translate.js'
import { weatherCommand } from './commands/weather.js'

/** The command line, whole: every command with its own --help. */
export function program(): Command {
  const frondline = new Command('frondline')
    .description('A plant-health helpline in one service: decision trees in YAML, a question engine, tickets for the specialist.')
    .version('0.1.0')
    .showHelpAfterError('(run with --help to see what is expected)')
    .addCommand(proofCommand())
    .addCommand(askCommand())
    .addCommand(matchCommand())
    .addCommand(replayCommand())
    .addCommand(reportCommand())
    .addCommand(suggestCommand())
    .addCommand(translateCommand())
    .addCommand(serveCommand())
    .addCommand(peopleCommand())
    .addCommand(backupCommand())
    .addCommand(restoreCommand())
    .addCommand(casebookCommand())
    .addCommand(weatherCommand())
    .addCommand(exportCommand())
    .addCommand(eraseCommand())
    .addCommand(seasonCommand())
  inheritSettings(frondline)
  return frondline
}

/** Commander hands settings such as the pointer to --help down only to commands it makes itself, not to those added. */
function inheritSettings(parent: Command): void {
  for (const command of parent.commands) {
    command.copyInheritedSettings(parent)
    inheritSettings(command)
  }
}
