import { readFile } from 'node:fs/promises'
import { deserialize } from 'node:v8'
import { inject } from 'vitest'
import type { Guide, GuideKeeping } from '../src/guide/index.js'

let read: Promise<Guide> | null = null

/** The guide as shipped, compiled by `guide-setup.ts` from the very files in `trees`. */
export function wholeGuide(): Promise<Guide> {
  // What was written is a Guide: the same run compiled it.
  read ??= readFile(inject('compiledGuide')).then((bytes) => deserialize(bytes) as Guide)
  return read
}

const atHand = new Map<string, Guide>()

/** Where a service that a test starts finds guides compiled before in this run: read, and made ready for hearing, once in a worker. */
export function guideKeeping(): GuideKeeping {
  return { ...inject('guideKeeping'), atHand }
}
