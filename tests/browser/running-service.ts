import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pino } from 'pino'
import { readSettings } from '../../src/http/settings.js'
import { startService, type StartOptions } from '../../src/http/start.js'
import { guideKeeping } from '../whole-guide.js'
import { sharedScreens } from './shared-screens.js'

/** The real service with the real guide and freshly built screens, in a folder of its own. */
export interface TestService {
  readonly url: string
  passwordOf(role: 'volunteer' | 'specialist' | 'administrator'): { name: string, password: string }
  stop(): Promise<void>
}

/** Starts the service on a free port. `panelOrigins` are other pages that may hold the panel; `trees` is a guide's folder other than ours, `more` are other settings. */
export async function startTestService(panelOrigins: readonly string[] = [], options: Partial<StartOptions> = {}, trees?: string, more: Readonly<Record<string, string>> = {}): Promise<TestService> {
  const home = await mkdtemp(join(tmpdir(), 'frondline-browser-'))
  const settings = readSettings({
    FRONDLINE_PORT: '0', FRONDLINE_HOME: join(home, 'store'), FRONDLINE_PANEL_ORIGINS: panelOrigins.join(','),
    FRONDLINE_CASES_PER_MINUTE: '1000', FRONDLINE_SIGN_INS_PER_MINUTE: '1000', FRONDLINE_TREES: trees, ...more,
  })
  const service = await startService(settings, pino({ level: 'silent' }), { webDir: await sharedScreens(), guideKeeping: guideKeeping(), ...options })
  return {
    url: service.url.replace(/\/$/, ''),
    passwordOf(role) {
      const account = service.newAccounts.find(candidate => candidate.role === role)
      if (account === undefined) throw new Error(`The service made no account for a ${role}; it made ${service.newAccounts.length}.`)
      return { name: account.name, password: account.password }
    },
    async stop() {
      await service.stop()
      await rm(home, { recursive: true, force: true })
    },
  }
}
