import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** Our own pages. `npx vite build --config src/web/vite.config.ts`, then the panel with its own config. */
export default defineConfig({
  root: here('pages'),
  publicDir: false,
  // Not the development form, whatever NODE_ENV says: it names source files in what is shipped.
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact', development: false } },
  build: {
    outDir: here('../../dist/web'),
    emptyOutDir: true,
    target: ['chrome123', 'firefox120', 'safari17.5'],
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    // Nothing may stand inline on a page: the service's content security policy refuses it.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: ['demo', 'case', 'sign-in', 'sheet', 'bench', 'season', 'missing', 'people', 'account', 'join', 'ask', 'seeing'].map(page => here(`pages/${page}.html`)),
    },
  },
})
