// npm run build: makes the clone ready to be run as dist/frondline.js: packages, program and screens.
import { ensureInstalled, ensureNode, ensureScreensBuilt, ensureServiceBuilt } from './ensure.mjs'

ensureNode()
ensureInstalled()
await ensureServiceBuilt()
ensureScreensBuilt()
