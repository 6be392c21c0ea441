import { fileURLToPath } from 'node:url'
import { build, type InlineConfig } from 'vite'

/**
 * Builds the pages, then the panel's modules, then the script that loads them, into a folder, `dist/web` when none is
 * named; the folder is emptied first. Run it: `npx tsx src/web/build-web.ts`
 */
export async function buildWeb(folder: string = fileURLToPath(new URL('../../dist/web', import.meta.url))): Promise<string> {
  const into = (config: string, more: InlineConfig = {}): InlineConfig => ({
    configFile: fileURLToPath(new URL(config, import.meta.url)), logLevel: 'error', ...more,
    build: { outDir: folder, emptyOutDir: config === 'vite.config.ts' },
  })
  await build(into('vite.config.ts'))
  const core = firstModule(await build(into('panel/vite.config.ts')))
  await build(into('panel/loader.config.ts', { define: { PANEL_CORE: JSON.stringify(core) } }))
  return folder
}

/** Name of the module that starts the panel. */
function firstModule(built: Awaited<ReturnType<typeof build>>): string {
  const [output] = [built].flat()
  const entry = output !== undefined && 'output' in output ? output.output.find(part => part.type === 'chunk' && part.isEntry) : undefined
  if (entry === undefined) throw new Error('The build of the panel made no first module.')
  return entry.fileName
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildWeb()
