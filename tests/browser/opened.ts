import type { Browser } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { openBrowser } from './browser.js'
import { startTestService, type TestService } from './running-service.js'

/** A service and a browser of this test file's own, there from its first test to its last. */
export interface Opened {
  readonly service: TestService
  readonly browser: Browser
}

/**
 * Starts a service and a browser before the tests of the calling file or block, and stops both after them.
 * What it gives is to be read inside tests and hooks only: before them neither is there.
 */
export function openedForTests(): Opened {
  let service: TestService | undefined
  let browser: Browser | undefined
  beforeAll(async () => {
    service = await startTestService()
    browser = await openBrowser()
  })
  afterAll(async () => {
    await browser?.close()
    await service?.stop()
  })
  return {
    get service() { return there(service, 'service') },
    get browser() { return there(browser, 'browser') },
  }
}

function there<Thing>(thing: Thing | undefined, name: string): Thing {
  if (thing === undefined) throw new Error(`The ${name} is read before the tests began; read it inside a test or a hook.`)
  return thing
}
