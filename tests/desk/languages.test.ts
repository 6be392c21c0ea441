import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openMailer } from '../../src/mail/index.js'
import { type MailServer, openMailServer } from '../mail/mail-server.js'
import { openWorld, type World } from './desk-world.js'

const ASHDOWN = 'ashdown@larkmoor.example'

let server: MailServer
let world: World
beforeEach(async () => {
  server = await openMailServer()
  world = await openWorld(undefined, { mailer: openMailer({ smtpUrl: server.url, from: 'helpline@plants.example' }), publicUrl: 'https://plants.example' })
})
afterEach(async () => {
  await world.close()
  await server.close()
})

const opened = (words = 'my lettuce is yellow') => world.desk.openCase({ words, language: 'es' }, null)
const handOver = { contact: { email: ASHDOWN } }

describe('the language of a case', () => {
  it('is kept, for whoever opens its link later', async () => {
    const { link } = await opened()
    world = await world.reopen()
    expect(await world.desk.showCase(link, null)).toMatchObject({ language: 'es' })
  })

  it('is changed by the asker like anything else on the sheet, and stands in its history', async () => {
    const { link } = await opened()
    expect(await world.desk.changeLanguage(link, { revision: 0, language: 'en' }, null)).toMatchObject({ language: 'en', revision: 1 })
    // A double press.
    expect(await world.desk.changeLanguage(link, { revision: 0, language: 'en' }, null)).toMatchObject({ language: 'en', revision: 1 })
    await expect(world.desk.changeLanguage(link, { revision: 0, language: 'es' }, null)).rejects.toMatchObject({ code: 'STALE_REVISION' })
    expect((await world.store.db.selectFrom('case_change').select(['kind', 'content']).orderBy('revision').execute()).at(-1)).toEqual({ kind: 'language', content: '{"language":"en"}' })
  })

  it('changes nothing of what was heard as dangerous or answered', async () => {
    const { link } = await opened('my toddler ate some berries off the bush by the gate')
    const changed = await world.desk.changeLanguage(link, { revision: 0, language: 'en' }, null)
    expect(changed.cards.length).toBeGreaterThan(0)
    const back = await world.desk.changeLanguage(link, { revision: 1, language: 'es' }, null)
    expect(back.cards.map(({ id }) => id)).toEqual(changed.cards.map(({ id }) => id))
  })

  it('is told to the people of the helpline, who read the guide as it was written', async () => {
    const { link } = await opened()
    await world.desk.settlePlace(link, { revision: 0, host: 'lettuce', node: null }, null)
    await world.desk.handOver(link, { revision: 1 }, null)
    const sedge = await world.member('sedge', 'specialist')
    const ticket = await world.desk.showTicket('1', sedge)
    expect(ticket.case).toMatchObject({ language: 'es', place: { host: { name: 'Lettuce' } } })
    expect(ticket.case.untranslated).toBeUndefined()
    expect((await world.desk.listTickets({ state: 'waiting' })).tickets[0]).toMatchObject({ language: 'es' })
  })
})

describe('what the service itself says to an asker in Spanish', () => {
  it('is Spanish where the guide has no words of its own: why a case is handed over, how sure, how often, no spray', async () => {
    const { link } = await opened()
    let view = await world.desk.settlePlace(link, { revision: 0, host: 'lettuce', node: null }, null)
    for (let turn = 0; turn < 12 && view.step.kind === 'ask'; turn++) {
      view = await world.desk.answerCheck(link, { revision: view.revision, check: view.step.check.id, answer: 'not sure' }, null)
    }
    expect(view.step).toMatchObject({ kind: 'hand-over', because: expect.stringMatching(/especialista|causa/) })
    if (view.step.kind === 'hand-over') expect(view.step.likely.filter(({ problem }) => problem === null).map(({ name }) => name)).toEqual(['Algo que no está en esta lista'].slice(0, view.step.likely.filter(({ problem }) => problem === null).length))
  })

  it('is a letter in Spanish that says so', async () => {
    const { link } = await opened()
    await world.desk.handOver(link, { revision: 0, ...handOver }, null)
    const sedge = await world.member('sedge', 'specialist')
    await world.desk.askBack('1', { text: '¿Puede mandar una foto?', checks: [], photos: true }, sedge)
    await world.desk.settleTicket('1', { text: 'Riegue menos.', outcome: { kind: 'not known' } }, sedge)
    await world.desk.sendDueMail()
    const said = server.letters.map(({ subject, text, headers }) => ({ subject, text: text ?? '', language: headers.get('content-language') }))
    expect(said.map(({ language }) => language)).toEqual(['es', 'es', 'es'])
    expect(said.map(({ subject }) => subject?.replace(/^.*?: /, ''))).toEqual([
      'hemos recibido su pregunta (consulta 1)', 'hay algo más que mirar (consulta 1)', 'la respuesta a su pregunta (consulta 1)',
    ])
    expect(said[2]?.text).toContain('    Riegue menos.')
    expect(said[2]?.text).toContain('lo que dice la etiqueta es la ley')
    for (const { text } of said) expect(text).toContain('Llame ahora mismo: ')
  })
})
