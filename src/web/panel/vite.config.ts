import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

/** The panel's modules: `core` is all of the first paint, the rest is loaded when a case is open. See build-web.ts. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  publicDir: false,
  // The modules name one another beside themselves: they are loaded from pages of other origins.
  base: './',
  // Not the development form, whatever NODE_ENV says: it names source files in what is shipped.
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact', development: false } },
  build: {
    outDir: fileURLToPath(new URL('../../../dist/web', import.meta.url)),
    // The pages are built into the same folder.
    emptyOutDir: false,
    target: ['chrome123', 'firefox120', 'safari17.5'],
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    modulePreload: false,
    rolldownOptions: {
      input: { core: fileURLToPath(new URL('define.ts', import.meta.url)) },
      output: { entryFileNames: 'panel/[name]-[hash].js', chunkFileNames: 'panel/[name]-[hash].js' },
    },
  },
})
