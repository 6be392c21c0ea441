import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

/** The one classic script that a host page loads. The build says which module it is to load; see build-web.ts. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: false,
  build: {
    outDir: fileURLToPath(new URL('../../../dist/web', import.meta.url)),
    emptyOutDir: false,
    target: ['chrome123', 'firefox120', 'safari17.5'],
    lib: { entry: 'loader.ts', formats: ['iife'], name: 'frondlinePanel', fileName: () => 'panel.js' },
  },
})
