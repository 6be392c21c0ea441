import { randomBytes } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CaseView, Role } from '../../shared/index.js'
import { createDesk, type Desk, KEY_BYTES, keyRing, type KeyRing, type MailPlace, type Member, type NamedKey } from '../../src/desk/index.js'
import type { Guide } from '../../src/guide/index.js'
import { folderHome } from '../../src/photos/index.js'
import { openStore, type Store } from '../../src/store/index.js'
import { dropTestStore, testStore } from '../store/test-store.js'
import { wholeGuide } from '../whole-guide.js'

/** The present of every test, until it is moved. */
export const NOON = '2026-05-14T12:00:00.000Z'

/** Words in which the guide hears lettuce and a complaint, no answer to any check, and nothing dangerous. */
export const LETTUCE_WORDS = 'something is wrong with the leaves of my lettuce, they look bad'
/** Words that already answer two checks of the lettuce. */
export const TELLING_WORDS = 'the outer leaves on my lettuce have yellow blocks and white fuzz underneath'
/** Words in which the guide hears an emergency that lets the case carry on. */
export const BERRY_WORDS = 'my toddler ate some berries off the bush by the gate'

export { wholeGuide as shippedGuide }

/** The key of every world that is not told otherwise, so that a world can be reopened. */
export const TEST_KEY: NamedKey = { id: 'test', bytes: new Uint8Array(KEY_BYTES).fill(7) }

/** A ring of keys for tests; the key of every world when none is given. */
export function testKeys(...keys: readonly NamedKey[]): KeyRing {
  const [first = TEST_KEY, ...older] = keys
  return keyRing([first, ...older], randomBytes)
}

export interface World {
  readonly desk: Desk
  readonly store: Store
  readonly home: string
  /** The clock: assign to move it. */
  now: Date
  /** The guide in use: assign to replace it while the desk is open. */
  guide: Guide
  /** Closes the store and opens a new desk on it, as after a restart, with other keys when some are given. */
  reopen(keys?: KeyRing): Promise<World>
  /** Makes a person and gives them as signed in. */
  member(name: string, role: Role): Promise<Member>
  close(): Promise<void>
}

/** A real desk on a real store, with the shipped guide. */
export async function openWorld(home?: string, mail: MailPlace | null = null, keys = testKeys()): Promise<World> {
  const folder = home ?? await mkdtemp(join(tmpdir(), 'frondline-desk-'))
  const store = await openStore(await testStore(folder))
  const world = { now: new Date(NOON), guide: await wholeGuide() }
  const desk = createDesk({
    db: store.db, listen: store.listen, guide: () => world.guide,
    photos: folderHome(join(folder, 'photos')), mail,
    report: (fault) => { throw fault }, clock: () => world.now, randomBytes: (count) => randomBytes(count), keys,
  })
  return Object.assign(world, {
    desk, store, home: folder,
    async reopen(others?: KeyRing) {
      await store.close()
      return openWorld(folder, mail, others ?? keys)
    },
    async member(name: string, role: Role) {
      const { password } = await desk.addPerson(name, role)
      return (await desk.signIn({ name, password }, 'a desk')).member
    },
    async close() {
      await store.close()
      await dropTestStore(folder)
      await rm(folder, { recursive: true, force: true })
    },
  })
}

/** A case about lettuce that is being asked its first check. */
export async function lettuceCase(desk: Desk): Promise<CaseView> {
  const opened = await desk.openCase({ words: LETTUCE_WORDS }, null)
  return desk.settlePlace(opened.link, { revision: 0, host: 'lettuce', node: null }, null)
}

/** The check that a case asks next. */
export function askedCheck(view: CaseView): { id: string; answers: string[] } {
  if (view.step.kind !== 'ask') throw new Error(`The case does not ask; its step is ${view.step.kind}.`)
  return view.step.check
}

/** Answers each check that a case asks, 'not sure' to those not listed, until it asks no more. */
export async function answerAll(desk: Desk, from: CaseView, answers: ReadonlyMap<string, string>): Promise<CaseView> {
  let view = from
  for (let turn = 0; view.step.kind === 'ask'; turn++) {
    if (turn > 30) throw new Error('The case asks more than thirty checks.')
    const { id } = view.step.check
    const answer = answers.get(id) ?? 'not sure'
    view = await desk.answerCheck(view.link, { revision: view.revision, check: id, answer }, null)
  }
  return view
}

/** The first of an array, or a failure of the test. */
export function first<Item>(items: readonly Item[]): Item {
  const [item] = items
  if (item === undefined) throw new Error('Expected at least one.')
  return item
}
