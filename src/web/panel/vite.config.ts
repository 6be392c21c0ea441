import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

/** The panel: one classic script for any page, styles inside. `npx vite build --config src/web/panel/vite.config.ts` */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: false,
  // Not the development form, whatever NODE_ENV says: it names source files in what is shipped.
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact', development: false } },
  build: {
    outDir: fileURLToPath(new URL('../../../dist/web', import.meta.url)),
    // The pages are built into the same folder.
    emptyOutDir: false,
    target: ['chrome123', 'firefox120', 'safari17.5'],
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    lib: { entry: 'define.ts', formats: ['iife'], name: 'frondlinePanel', fileName: () => 'panel.js' },
  },
})
