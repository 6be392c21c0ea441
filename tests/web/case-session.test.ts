import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { CaseView } from '../../shared/index.js'
import { answerOnItsWay } from '../../src/web/case/answer-on-its-way.js'
import { createCaseSession, type CaseSession } from '../../src/web/case/case-session.js'
import type { CaseService } from '../../src/web/wire/case-service.js'
import type { Reply } from '../../src/web/wire/reply.js'

const LOST = { ok: false, trouble: { kind: 'lost', detail: null } } as const

/** A service that keeps one case as ours does, by revision, and can be cut off. */
function smallService() {
  let revision = 1
  const answers = new Map<string, string>()
  const words: string[] = []
  const took: string[] = []
  const line = { on: true, losesReplies: false }
  const view = () => ({
    link: 'a-link', revision, words: [...words], cards: [], ticket: null,
    lines: [...answers].map(([id, answer]) => ({ check: { id }, answer, from: 'asked', onPath: true })),
  }) as unknown as CaseView
  const last = new Map<number, string>()
  const service: Pick<CaseService, 'changeCase' | 'caseByLink'> = {
    caseByLink: async () => line.on ? { ok: true, value: view() } : LOST,
    async changeCase(_link, path, body): Promise<Reply<CaseView>> {
      if (!line.on) return LOST
      const said = JSON.stringify([path, body])
      if (body.revision !== revision) {
        return last.get(body.revision) === said ? { ok: true, value: view() } : { ok: false, trouble: { kind: 'stale', view: view() } }
      }
      last.set(revision, said)
      revision += 1
      took.push(said)
      if ('check' in body && 'answer' in body) answers.set(body.check, body.answer)
      if ('words' in body) words.push(body.words)
      return line.losesReplies ? LOST : { ok: true, value: view() }
    },
  }
  return {
    service: service as CaseService, line, took, words, answers,
    /** Somebody else answers, from another window. */
    answerElsewhere(check: string, answer: string) { answers.set(check, answer); revision += 1 },
  }
}

const settled = () => new Promise(resolve => setTimeout(resolve))
const answer = (session: CaseSession, check: string, said: string) => session.change({ path: 'answers', body: { check, answer: said } })

async function begun() {
  const small = smallService()
  const session = createCaseSession(small.service)
  session.load('a-link')
  await settled()
  return { ...small, session }
}

describe('a sheet whose network is lost', () => {
  it('lets what is answered meanwhile wait its turn, and sends all of it when the network is back', async () => {
    const { session, line, answers, words, took } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answer(session, 'stem', 'firm')
    session.change({ path: 'words', body: { words: 'It began in May.' } })
    await settled()
    expect(session.state()).toMatchObject({ trouble: { kind: 'lost' }, queue: [{ path: 'answers' }, { path: 'words' }] })
    expect(answerOnItsWay(session.state(), 'stem')).toBe('firm')
    line.on = true
    session.tryAgain()
    await settled()
    expect(Object.fromEntries(answers)).toEqual({ leaf: 'spots', stem: 'firm' })
    expect(words).toEqual(['It began in May.'])
    expect(took).toHaveLength(3)
    expect(session.state()).toMatchObject({ trouble: null, errand: null, queue: [], sending: false })
  })

  it('takes the last of two answers to one check, and writes each once although a reply was lost', async () => {
    const { session, line, answers, took } = await begun()
    line.losesReplies = true
    answer(session, 'leaf', 'spots')
    await settled()
    line.on = false
    answer(session, 'leaf', 'holes')
    expect(answerOnItsWay(session.state(), 'leaf')).toBe('holes')
    line.on = true
    line.losesReplies = false
    session.tryAgain()
    await settled()
    expect(answers.get('leaf')).toBe('holes')
    expect(took).toHaveLength(2)
  })

  it('counts the same press twice as one', async () => {
    const { session, line } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answer(session, 'leaf', 'spots')
    expect(session.state().queue).toEqual([])
    session.pause()
  })

  it('does not write over what somebody else answered meanwhile, says so, and still sends the rest', async () => {
    const { session, line, answers, words, answerElsewhere } = await begun()
    line.on = false
    session.change({ path: 'words', body: { words: 'First.' } })
    await settled()
    answer(session, 'stem', 'firm')
    session.change({ path: 'words', body: { words: 'Second.' } })
    answerElsewhere('stem', 'soft')
    line.on = true
    session.tryAgain()
    await settled()
    expect(answers.get('stem')).toBe('soft')
    // Words are only added: they are right on any sheet.
    expect(words).toEqual(['First.', 'Second.'])
    expect(session.state()).toMatchObject({ trouble: { kind: 'stale' }, errand: null, queue: [] })
  })

  it('writes a kept answer on a sheet that others have changed elsewhere, but not where they answered the same check', async () => {
    const { session, line, answers, answerElsewhere } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answerElsewhere('roots', 'firm')
    line.on = true
    session.tryAgain()
    await settled()
    expect(Object.fromEntries(answers)).toEqual({ roots: 'firm', leaf: 'spots' })
    expect(session.state().trouble).toBeNull()

    line.on = false
    answer(session, 'bark', 'green')
    await settled()
    answerElsewhere('bark', 'brown')
    line.on = true
    session.tryAgain()
    await settled()
    expect(answers.get('bark')).toBe('brown')
    expect(session.state()).toMatchObject({ trouble: { kind: 'stale' }, errand: null })
  })

  it('sends nothing while it is paused, and all of it afterwards', async () => {
    const { session, line, took } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answer(session, 'stem', 'firm')
    session.pause()
    line.on = true
    session.tryAgain()
    await settled()
    expect(took).toEqual([])
    session.resume()
    await settled()
    expect(took).toHaveLength(2)
  })

  describe('and whose page is loaded anew', () => {
    const kept = new Map<string, string>()
    beforeEach(() => vi.stubGlobal('sessionStorage', {
      getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => kept.set(key, value), removeItem: (key: string) => kept.delete(key),
    }))
    afterEach(() => { vi.unstubAllGlobals(); kept.clear() })

    it('sends what was kept, and nothing twice that had arrived without a reply', async () => {
      const { session, line, took, answers, words, service } = await begun()
      line.losesReplies = true
      session.change({ path: 'words', body: { words: 'It began in May.' } })
      await settled()
      answer(session, 'stem', 'firm')
      // The page goes as it stands, without a word.
      line.losesReplies = false
      const next = createCaseSession(service)
      next.load('a-link')
      await settled()
      expect(words).toEqual(['It began in May.'])
      expect(answers.get('stem')).toBe('firm')
      expect(took).toHaveLength(2)
      expect(next.state()).toMatchObject({ errand: null, queue: [], trouble: null })
      expect(kept.size).toBe(0)
    })

    it('keeps no contact in the tab', async () => {
      const { session, line } = await begun()
      line.on = false
      session.change({ path: 'hand-over', body: { contact: { email: 'fern@larkmoor.example' } } })
      await settled()
      expect([...kept.values()].join()).not.toContain('fern@')
    })
  })

  it('sends nothing that waits for one sheet to another', async () => {
    const { session, line, took, service } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answer(session, 'stem', 'firm')
    const other = { ...session.state().view, link: 'other-link', lines: [] } as unknown as CaseView
    service.caseByLink = async () => ({ ok: true, value: other })
    line.on = true
    session.load('other-link')
    await settled()
    expect(session.state()).toMatchObject({ view: { link: 'other-link' }, queue: [], errand: null })
    expect(took).toEqual([])
  })

  it('forgets what waited when a new sheet is begun', async () => {
    const { session, line, took } = await begun()
    line.on = false
    answer(session, 'leaf', 'spots')
    await settled()
    answer(session, 'stem', 'firm')
    session.reset()
    line.on = true
    await settled()
    expect(session.state()).toMatchObject({ view: null, errand: null, queue: [] })
    expect(took).toEqual([])
  })
})
