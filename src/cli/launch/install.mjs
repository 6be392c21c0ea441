// Installs what the lock file names, and nothing else: for an image, where this is a layer of its own.
import { ensureInstalled, ensureNode } from './ensure.mjs'

ensureNode()
ensureInstalled()
