import { chromium, type Browser } from 'playwright-core'

/** The machine's own Chromium, quiet and without a profile. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['FRONDLINE_CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync',
    ],
  })
}

/** The two widths every screen is looked at: a phone and a desk. */
export const widths = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'desk', width: 1280, height: 900 },
] as const
