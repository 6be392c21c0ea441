import { mkdtemp, rm } from 'node:fs/promises'
import { randomBytes } from 'node:crypto'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createDesk, type Desk } from '../../src/desk/index.js'
import { contactKeys } from '../../src/http/index.js'
import { folderHome } from '../../src/photos/index.js'
import { openStore, type Store } from '../../src/store/index.js'
import { shippedGuide } from '../desk/desk-world.js'
import { COMMAND_TIMEOUT_MS, runFrondline } from './run-frondline.js'

let home: string
let link: string
/** The running service, in this process; the commands are others. */
let service: { readonly desk: Desk; readonly store: Store }
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'frondline-asker-'))
  process.env.FRONDLINE_HOME = home
  const guide = await shippedGuide()
  const store = await openStore({ home })
  const desk = createDesk({
    db: store.db, listen: store.listen, guide: () => guide, photos: folderHome(join(home, 'photos')), mail: null,
    report: (fault) => { throw fault }, clock: () => new Date(), randomBytes: (count) => randomBytes(count),
    keys: await contactKeys({ contactKeys: [], home, production: false }),
  })
  ;({ link } = await desk.openCase({ words: 'my lettuce is slimy' }, null))
  await desk.handOver(link, { revision: 0, contact: { name: 'Rowan Holm' }, note: 'by the gate' }, null)
  service = { desk, store }
}, 180_000)
afterAll(async () => {
  delete process.env.FRONDLINE_HOME
  await service.store.close()
  await rm(home, { recursive: true, force: true })
})

describe('frondline export and erase', { timeout: 3 * COMMAND_TIMEOUT_MS }, () => {
  it('give out all that is kept of an asker, erase it only with --yes, and know the link no more afterwards', async () => {
    const shown = await runFrondline(['export', '--asker', `https://plants.example/case#${link}`])
    expect(shown).toMatchObject({ exit: 0, err: '' })
    expect(JSON.parse(shown.out)).toMatchObject({ words: ['my lettuce is slimy'], ticket: { contact: { name: 'Rowan Holm' }, note: 'by the gate' } })

    expect((await runFrondline(['erase', '--asker', link])).out).toContain('Do it with --yes. It cannot be undone.')
    expect((await runFrondline(['export', '--asker', link])).exit).toBe(0)
    expect(await runFrondline(['erase', '--asker', link, '--yes'])).toMatchObject({ exit: 0, out: 'Erased. The link is dead.\n' })
    expect(await runFrondline(['export', '--asker', link])).toMatchObject({ exit: 1, out: '', err: expect.stringContaining('No case has this link.') })
  })

  it('work beside the running service, which knows an erased case no more, though it has just shown it', async () => {
    const { desk } = service
    const opened = await desk.openCase({ words: 'my lettuce is slimy too' }, null)
    expect(JSON.parse((await runFrondline(['export', '--asker', opened.link])).out)).toMatchObject({ words: ['my lettuce is slimy too'] })
    await desk.addWords(opened.link, { revision: 0, words: 'and it smells' }, null)
    expect(JSON.parse((await runFrondline(['export', '--asker', opened.link])).out)).toMatchObject({ words: ['my lettuce is slimy too', 'and it smells'] })
    await desk.showCase(opened.link, null)
    expect(await runFrondline(['erase', '--asker', opened.link, '--yes'])).toMatchObject({ exit: 0 })
    await expect(desk.showCase(opened.link, null)).rejects.toThrow('CASE_NOT_FOUND')
    await expect(desk.addWords(opened.link, { revision: 1, words: 'still' }, null)).rejects.toThrow('CASE_NOT_FOUND')
  })

  it('refuse what is no link', async () => {
    expect(await runFrondline(['erase', '--asker', 'nonsense', '--yes'])).toMatchObject({ exit: 1, out: '', err: expect.stringContaining('This is no link of a case.') })
  })
})

describe('frondline casebook', { timeout: COMMAND_TIMEOUT_MS }, () => {
  it('says so when no case was kept yet', async () => {
    expect(await runFrondline(['casebook'])).toMatchObject({ exit: 0, out: '', err: expect.stringContaining('No case has been kept yet.') })
  })
})
