import { Command } from 'commander'
import { pino } from 'pino'
import { readSettings, type RunningService, SettingsFault, startService } from '../../http/index.js'
import { builtScreens, guideKeeping } from '../built-program.js'
import { notice, print } from '../terminal.js'

/** `frondline serve`: the whole service in one process, until it is told to stop. */
export function serveCommand(): Command {
  return new Command('serve')
    .description('Run the service: the panel, the call sheet, the bench and the API, on one port.')
    .option('--port <number>', 'port to listen on (FRONDLINE_PORT)')
    .option('--home <dir>', 'folder of the store (FRONDLINE_HOME)')
    .option('--trees <dir>', 'folder of the guide (FRONDLINE_TREES)')
    .option('--log <level>', 'how much to log: debug, info, warn, error or silent', 'warn')
    .addHelpText('after', '\nAll settings are environment variables; see DEVELOPERS.md. Stop with Ctrl-C: what is under way is finished first.')
    .action(async (options: { port?: string; home?: string; trees?: string; log: string }) => {
      const environment = {
        ...process.env,
        ...(options.port === undefined ? {} : { FRONDLINE_PORT: options.port }),
        ...(options.home === undefined ? {} : { FRONDLINE_HOME: options.home }),
        ...(options.trees === undefined ? {} : { FRONDLINE_TREES: options.trees }),
      }
      const service = await start(environment, options.log)
      if (service === null) {
        process.exitCode = 1
        return
      }
      const stop = (): void => {
        notice('Stopping …')
        service.stop().then(() => { process.exit(0) }, (fault: unknown) => {
          notice(fault instanceof Error ? fault.message : String(fault))
          process.exit(1)
        })
      }
      process.once('SIGINT', stop)
      process.once('SIGTERM', stop)
    })
}

async function start(environment: NodeJS.ProcessEnv, level: string): Promise<RunningService | null> {
  try {
    const settings = readSettings(environment)
    const log = pino({ level })
    const service = await startService(settings, log, { webDir: builtScreens, guideKeeping: guideKeeping() })
    print(`Frondline is running at ${service.url}`, `  ${service.url}/          the panel in a demonstration page`, `  ${service.url}/sheet     the volunteers' call sheet`, `  ${service.url}/bench     the specialists' bench`)
    if (service.newAccounts.length > 0) {
      print('', 'First accounts, shown only now:')
      for (const { name, role, password } of service.newAccounts) print(`  ${name.padEnd(8)} ${role.padEnd(14)} ${password}`)
    }
    return service
  } catch (fault) {
    if (fault instanceof SettingsFault || !(fault instanceof Error)) notice(String(fault instanceof Error ? fault.message : fault))
    else notice(explainStart(fault, environment))
    return null
  }
}

/** What a person can do about a start that failed. */
function explainStart(fault: Error, environment: NodeJS.ProcessEnv): string {
  const code = 'code' in fault ? fault.code : null
  if (code === 'EADDRINUSE') return `The port ${environment.FRONDLINE_PORT ?? '8420'} is in use. Stop what uses it, or choose another: npm start -- --port 8421`
  return `The service did not start. ${fault.message}`
}
