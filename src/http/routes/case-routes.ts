import {
  AddWords, AnswerCheck, CarryOn, CaseView, ChangeLanguage, HandOver, NoteCall, OpenCase, SettlePlace, TakeBack,
} from '../../../shared/index.js'
import { defineMemberRoute, defineRoute, type Route } from '../route.js'

/** A case from the first words to the hand-over. */
export const caseRoutes: readonly Route[] = [
  defineRoute('POST', '/api/cases', {
    summary: 'Opens a case from the asker\'s words; the same key again brings the same case.',
    body: OpenCase, reply: CaseView, status: 201, limit: 'open case',
    // A call is spoken in whatever language the volunteer speaks; that is not the browser's to say.
    handle: ({ desk, body, who, language }) => desk.openCase(who === null ? { language: language(), ...body } : body, who),
  }),
  defineRoute('GET', '/api/cases/:link', {
    summary: 'A case as it stands.',
    reply: CaseView,
    handle: ({ desk, part, who }) => desk.showCase(part('link'), who),
  }),
  defineRoute('POST', '/api/cases/:link/place', {
    summary: 'Settles the plant and the complaint.',
    body: SettlePlace, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.settlePlace(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/words', {
    summary: 'Adds to the asker\'s words.',
    body: AddWords, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.addWords(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/answers', {
    summary: 'Answers a check, or changes an earlier answer.',
    body: AnswerCheck, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.answerCheck(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/take-back', {
    summary: 'Takes an answer back: its check is open again.',
    body: TakeBack, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.takeBack(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/carry-on', {
    summary: 'Goes on with the plant question after a warning card.',
    body: CarryOn, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.carryOn(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/language', {
    summary: 'Speaks to the asker in another language from now on.',
    body: ChangeLanguage, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.changeLanguage(part('link'), body, who),
  }),
  defineRoute('POST', '/api/cases/:link/hand-over', {
    summary: 'Hands the case to a specialist; a repeat changes nothing.',
    body: HandOver, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, who }) => desk.handOver(part('link'), body, who),
  }),
  defineMemberRoute('POST', '/api/cases/:link/notes', {
    summary: 'Adds a note to a call.',
    body: NoteCall, reply: CaseView, limit: 'change case',
    handle: ({ desk, part, body, member }) => desk.noteCall(part('link'), body, member),
  }),
]
