import { existsSync } from 'node:fs'
import { mkdir, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { inject } from 'vitest'
import { buildWeb } from '../../src/web/build-web.js'

const POLL_MS = 200

/**
 * The screens, built from their sources once for a whole run of the tests: the first test file that needs them builds them,
 * the others wait for it. They are moved to their place when they are whole.
 */
export async function sharedScreens(): Promise<string> {
  const built = join(inject('sharedFolder'), 'web')
  const building = join(inject('sharedFolder'), 'web-building')
  const isFirst = await mkdir(building).then(() => true, () => false)
  if (isFirst) await rename(await buildWeb(join(building, 'web')), built)
  while (!existsSync(built)) await wait(POLL_MS)
  return built
}
