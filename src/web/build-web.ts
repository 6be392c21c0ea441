import { fileURLToPath } from 'node:url'
import { build } from 'vite'

/**
 * Builds the pages and then the panel into a folder, `dist/web` when none is named; the folder is emptied first.
 * Run it: `npx tsx src/web/build-web.ts`
 */
export async function buildWeb(folder: string = fileURLToPath(new URL('../../dist/web', import.meta.url))): Promise<string> {
  for (const [config, emptyOutDir] of [['vite.config.ts', true], ['panel/vite.config.ts', false]] as const) {
    await build({ configFile: fileURLToPath(new URL(config, import.meta.url)), logLevel: 'error', build: { outDir: folder, emptyOutDir } })
  }
  return folder
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildWeb()
