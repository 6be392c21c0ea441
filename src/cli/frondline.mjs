#!/usr/bin/env node
// The command `frondline`: makes the clone ready where needed, then hands over to the built program.
import { pathToFileURL } from 'node:url'
import { join } from 'node:path'
import { ensureInstalled, ensureNode, ensureScreensBuilt, ensureServiceBuilt, root } from './launch/ensure.mjs'

ensureNode()
ensureInstalled()
await ensureServiceBuilt()
const [command, ...options] = process.argv.slice(2)
if (command === 'serve' && !options.includes('--help') && !options.includes('-h')) ensureScreensBuilt()
await import(pathToFileURL(join(root, 'dist/frondline.js')).href)
