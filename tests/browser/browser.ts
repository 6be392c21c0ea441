import { chromium, type Browser, type BrowserContext } from 'playwright-core'

// What Playwright turns off (`chromiumSwitches.ts`), once more, since Chromium heeds only the last such list; and the pages that
// it loads into every new window for its own address line, which nobody sees here and which took as long as our own page.
const TURNED_OFF = [
  'AvoidUnnecessaryBeforeUnloadCheckSync', 'DestroyProfileOnBrowserClose', 'HttpsUpgrades', 'HttpsFirstBalancedModeAutoEnable', 'LensOverlay',
  'MediaRouter', 'PaintHolding', 'ThirdPartyStoragePartitioning', 'AvoidCorsURLLoaderRestartOnRedirect', 'TcpPortRandomizationWin',
  'OptimizationHints', 'NetworkTimeServiceQuerying', 'AimEnabled', 'PreconnectToSearch',
  'WebUIOmniboxPopup', 'WebUIOmniboxAimPopup', 'WebUIOmniboxFullPopup',
]

/** The machine's own Chromium, quiet and without a profile. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['FRONDLINE_CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox', '--disable-gpu', '--disable-gpu-rasterization', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync', `--disable-features=${TURNED_OFF.join(',')}`,
    ],
  })
}

/** A visitor with no past, whose waits end with what was waited for rather than with the whole test. */
export async function newVisitor(browser: Browser, { width, height }: { width: number, height: number }): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' })
  context.setDefaultTimeout(10_000)
  return context
}

/** How long a whole story may take; the machine may be busy. */
export const STORY_MS = 120_000

/** The two widths every screen is looked at: a phone and a desk. */
export const widths = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'desk', width: 1280, height: 900 },
] as const
