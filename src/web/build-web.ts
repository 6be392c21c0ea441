import { fileURLToPath } from 'node:url'
import { build } from 'vite'

/** Builds the pages and then the panel into `dist/web`, and returns that folder. Run it: `npx tsx src/web/build-web.ts` */
export async function buildWeb(): Promise<string> {
  for (const config of ['vite.config.ts', 'panel/vite.config.ts']) {
    await build({ configFile: fileURLToPath(new URL(config, import.meta.url)), logLevel: 'warn' })
  }
  return fileURLToPath(new URL('../../dist/web', import.meta.url))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildWeb()
