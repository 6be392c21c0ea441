import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

/** The panel: one classic script for any page, styles inside. `npx vite build --config src/web/panel/vite.config.ts` */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: false,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: fileURLToPath(new URL('../../../dist/web', import.meta.url)),
    // The pages are built into the same folder.
    emptyOutDir: false,
    target: ['chrome123', 'firefox120', 'safari17.5'],
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    lib: { entry: 'define.ts', formats: ['iife'], name: 'frondlinePanel', fileName: () => 'panel.js' },
  },
})
