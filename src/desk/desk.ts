import type {
  AddWords, AnswerCheck, ApproveNote, AskBack, CallList, CarryOn, CaseView, ChangeLanguage, ChangePassword, ChangeRole,
  CheckRows, CodeSecret, Colleagues, ComplaintRows, ConfirmCode, ConfirmPassword, DistrictWeather, HandOn, HandOver,
  HelplineSettings, HostRows, Invitation, InvitationView, Invite, Join, KeptCases, KeptSuggestions, Language,
  LookAtInvitation, MailView, Me, NoteCall, NoteForColleagues, NoteView, OpenCase, OtherTicket, PeopleList, PhotoKept,
  PhotoSize, PlausibleTable, PracticeCall, PracticeTruth, PresenceTable, ProblemRows, RecordResult, RecoveryCodes,
  RegionView, ReviewTicket, Role, SeasonSearch, SeasonView, SeeingList, SendSample, SetPresence, SettlePlace, SettleReview,
  SettleTicket, SignIn, SimilarCases, Suggestions, TakeBack, TakeBackNote, TicketContact, TicketList, TicketView,
  WatchNotices, WeekCounts, WeeksSearch,
} from '../../shared/index.js'
import type { WeatherSummary } from '../season/index.js'
import { reachStore, ticketCounts } from '../store/index.js'
import { keptCases, keptSuggestions } from './casebook/keep.js'
import { reviewTicket } from './casebook/review.js'
import { answerCheck } from './cases/answer-check.js'
import { closeCall, listCalls } from './cases/calls.js'
import { carryOnChange } from './cases/carry-on-change.js'
import type { CaseChange } from './cases/case-change.js'
import { changeCase } from './cases/change-case.js'
import { handOver } from './cases/hand-over.js'
import { languageChange } from './cases/language-change.js'
import { noteChange } from './cases/note-change.js'
import { openCase } from './cases/open-case.js'
import { placeChange } from './cases/place-change.js'
import { nextPractice, practiceTruth } from './cases/practice.js'
import { similarCases } from './cases/similar-cases.js'
import { takeBackChange } from './cases/take-back-change.js'
import { wordsChange } from './cases/words-change.js'
import { retryMail, showMail } from './mail/mail-desk.js'
import { forgetOldMail, sendDueMail } from './mail/send-due.js'
import { addDemonstrationPeople, addPerson, type NewAccount, removePerson } from './people/accounts.js'
import { confirmCodes, showMe, startCodes, stopCodes } from './people/codes.js'
import { decideSettings, helplineSettings } from './people/helpline-settings.js'
import { invite, join, lookAtInvitation, withdrawInvitation } from './people/invitations.js'
import type { Member } from './people/member.js'
import { changePassword, signOutEverywhere } from './people/own-account.js'
import { changeRole, endAccount, forgetCodesOf, showPeople, signOutPerson } from './people/people-desk.js'
import { memberOfSession, type SignedIn, signIn, signOut } from './people/sign-in.js'
import { addPhoto, type ReadFile } from './photos/add-photo.js'
import { removePhoto } from './photos/remove-photo.js'
import { showPhoto, type ShownPhoto } from './photos/show-photo.js'
import { sweepPictures } from './photos/sweep-pictures.js'
import { eraseDueContacts } from './privacy/erase-due.js'
import { sealAnew } from './privacy/seal-anew.js'
import { type DeskParts, furnishRoom } from './room.js'
import { approveNote, publicNotes, showNote, takeBackNote } from './season/note-desk.js'
import { seeNotice, showNotices } from './season/notice-desk.js'
import { setPresence, showPresence } from './season/presence-desk.js'
import { pullWeather } from './season/pull-weather.js'
import { recountSeason } from './season/recount.js'
import { showPlausible, showSeason, weekCounts } from './season/season-desk.js'
import { showWeather } from './season/show-weather.js'
import { weatherNow } from './season/weather-now.js'
import { spokenGuide } from './spoken-guide.js'
import { askBack } from './tickets/ask-back.js'
import { followTickets, type FollowTickets } from './tickets/follow.js'
import { giveBack } from './tickets/give-back.js'
import { listTickets, type Sought } from './tickets/list-tickets.js'
import { linkTicket, mergeTicket, unlinkTicket, unmergeTicket } from './tickets/relate.js'
import { recordResult, sendSample } from './tickets/samples.js'
import { readContact } from './tickets/ticket-contact.js'
import {
  amendTicket, handOn, listColleagues, noteForColleagues, reopenTicket, settleTicket, showTicket, takeTicket,
} from './tickets/ticket-desk.js'
import { checkRows, complaintRows, hostRows, problemRows, regionView, suggestionsFor } from './views/guide-lists.js'
import { showCaseAt } from './views/show-case.js'

/** Whoever asks: a signed-in person, or null for the public. */
export type Who = Member | null

/** Everything that can be asked of the helpline. Each refusal is a DeskFault and changes nothing. */
export interface Desk {
  region(language?: Language): RegionView
  hosts(language?: Language): HostRows
  complaints(host: string, language?: Language): ComplaintRows
  /** The names are in the guide's own language, the advice in that of the asker who will read it. */
  problems(host: string, adviceIn?: Language): ProblemRows
  checks(host: string): CheckRows
  suggest(words: string): Suggestions

  openCase(body: OpenCase, who: Who): Promise<CaseView>
  showCase(link: string, who: Who): Promise<CaseView>
  settlePlace(link: string, body: SettlePlace, who: Who): Promise<CaseView>
  addWords(link: string, body: AddWords, who: Who): Promise<CaseView>
  answerCheck(link: string, body: AnswerCheck, who: Who): Promise<CaseView>
  takeBack(link: string, body: TakeBack, who: Who): Promise<CaseView>
  carryOn(link: string, body: CarryOn, who: Who): Promise<CaseView>
  changeLanguage(link: string, body: ChangeLanguage, who: Who): Promise<CaseView>
  handOver(link: string, body: HandOver, who: Who): Promise<CaseView>
  noteCall(link: string, body: NoteCall, who: Member): Promise<CaseView>
  /** Settled cases of this season, on the same plant and in the same district, that are like this one. */
  similarCases(link: string, who: Member): Promise<SimilarCases>

  addPhoto(link: string, uploadKey: string, read: ReadFile, who: Who): Promise<PhotoKept>
  showPhoto(link: string, photo: string, size: PhotoSize): Promise<ShownPhoto>
  removePhoto(link: string, photo: string, who: Who): Promise<CaseView>
  /** Takes away pictures that no photo shows; returns how many. */
  sweepPictures(): Promise<number>

  /** Sends the letters that are due, until `stopped` says so. Returns when the next is due, or null. */
  sendDueMail(stopped?: () => boolean): Promise<Date | null>
  forgetOldMail(): Promise<void>
  showMail(): Promise<MailView>
  retryMail(mail: string): Promise<MailView>

  /** A worked case to practise on, none of those done already while there are others. */
  nextPractice(done: readonly string[]): PracticeCall
  practiceTruth(practice: string): PracticeTruth
  listCalls(who: Member): Promise<CallList>
  closeCall(link: string, who: Member): Promise<CallList>

  listTickets(search: Sought): Promise<TicketList>
  showTicket(ticket: string, who: Member): Promise<TicketView>
  takeTicket(ticket: string, who: Member): Promise<TicketView>
  reviewTicket(ticket: string, body: ReviewTicket): Promise<SettleReview>
  settleTicket(ticket: string, body: SettleTicket, who: Member): Promise<TicketView>
  amendTicket(ticket: string, body: SettleTicket, who: Member): Promise<TicketView>
  reopenTicket(ticket: string, who: Member): Promise<TicketView>
  giveBack(ticket: string, who: Member): Promise<TicketView>
  handOn(ticket: string, body: HandOn, who: Member): Promise<TicketView>
  listColleagues(): Promise<Colleagues>
  askBack(ticket: string, body: AskBack, who: Member): Promise<TicketView>
  sendSample(ticket: string, body: SendSample, who: Member): Promise<TicketView>
  recordResult(ticket: string, body: RecordResult, who: Member): Promise<TicketView>
  noteForColleagues(ticket: string, body: NoteForColleagues, who: Member): Promise<TicketView>
  mergeTicket(ticket: string, body: OtherTicket, who: Member): Promise<TicketView>
  unmergeTicket(ticket: string, who: Member): Promise<TicketView>
  linkTicket(ticket: string, body: OtherTicket, who: Member): Promise<TicketView>
  unlinkTicket(ticket: string, body: OtherTicket, who: Member): Promise<TicketView>
  /** Calls `hear` for each change of a ticket, whichever process made it. */
  readonly followTickets: FollowTickets
  /** How many tickets there are in each state that has any. */
  countTickets(): Promise<readonly { readonly state: string; readonly count: number }[]>
  /** Rejects when the store does not answer. */
  reachStore(): Promise<void>
  readContact(ticket: string, who: Member): Promise<TicketContact>

  /** Reports by problem, host, district and week. */
  weekCounts(search: WeeksSearch): Promise<WeekCounts>
  showSeason(search: SeasonSearch): Promise<SeasonView>
  showPlausible(district: string): Promise<PlausibleTable>
  showWeather(district: string): Promise<DistrictWeather>
  /** The note of a week, this one when none is named: as the service would write it, and as it is published. */
  showNote(week?: string): Promise<NoteView>
  approveNote(body: ApproveNote, who: Member): Promise<NoteView>
  takeBackNote(body: TakeBackNote, who: Member): Promise<NoteView>
  /** What everyone may read. */
  publicNotes(): Promise<SeeingList>
  showPresence(): Promise<PresenceTable>
  setPresence(body: SetPresence, who: Member): Promise<PresenceTable>
  /** First reports of watch problems. */
  showNotices(): Promise<WatchNotices>
  seeNotice(notice: string, who: Member): Promise<WatchNotices>
  /** Counts every case anew; returns how many were looked at. */
  recountSeason(): Promise<number>
  keptCases(): Promise<KeptCases>
  keptSuggestions(): Promise<KeptSuggestions>

  /** At every start: seals what lies open or under an older key. */
  sealAnew(): Promise<void>
  /** On a schedule: erases contact details that were kept long enough. Returns how many. */
  eraseDueContacts(): Promise<number>

  /** On a schedule: fetches what weather stations recorded from these addresses, `{station}` in them standing for a station's id. */
  pullWeather(addresses: readonly string[]): Promise<void>
  /** The weather of a district as of an ISO date, by the station that has recorded last; null when the district has none. */
  weatherNow(district: string, asOf: string): Promise<WeatherSummary | null>

  signIn(body: SignIn, address: string): Promise<SignedIn>
  signOut(token: string): Promise<void>
  memberOfSession(token: string): Promise<Member | null>
  showMe(who: Member): Promise<Me>
  lookAtInvitation(body: LookAtInvitation): Promise<InvitationView>
  join(body: Join): Promise<SignedIn>
  changePassword(who: Member, body: ChangePassword, session: { readonly token: string; readonly address: string }): Promise<void>
  signOutEverywhere(who: Member): Promise<void>
  startCodes(who: Member, body: ConfirmPassword, address: string): Promise<CodeSecret>
  confirmCodes(who: Member, body: ConfirmCode): Promise<RecoveryCodes>
  stopCodes(who: Member, body: ConfirmPassword, address: string): Promise<void>

  showPeople(): Promise<PeopleList>
  invite(body: Invite, who: Member): Promise<Invitation>
  withdrawInvitation(name: string): Promise<PeopleList>
  changeRole(body: ChangeRole, who: Member): Promise<PeopleList>
  endAccount(name: string, who: Member): Promise<PeopleList>
  signOutPerson(name: string, who: Member): Promise<PeopleList>
  forgetCodesOf(name: string, who: Member): Promise<PeopleList>
  helplineSettings(): Promise<HelplineSettings>
  decideSettings(settings: HelplineSettings, who: Member): Promise<HelplineSettings>
  addPerson(name: string, role: Role): Promise<NewAccount>
  removePerson(name: string): Promise<boolean>
  addDemonstrationPeople(): Promise<readonly NewAccount[]>
}

/** Opens the desk on a store and a guide. */
export function createDesk(parts: DeskParts): Desk {
  const room = furnishRoom(parts)
  const guide = () => room.knowledge().guide
  const show = (link: string, who: Who) => showCaseAt(room, link, who)
  const change = (link: string, revision: number, who: Who, made: CaseChange) => changeCase(room, link, revision, who, made)
  const spoken = (language?: Language) => language === undefined ? guide() : spokenGuide(guide(), language)
  return {
    region: (language) => regionView(spoken(language), room.mail !== null),
    hosts: (language) => hostRows(spoken(language), guide()),
    complaints: (host, language) => complaintRows(spoken(language), host, guide()),
    problems: (host, adviceIn) => problemRows(guide(), host, spoken(adviceIn)),
    checks: (host) => checkRows(guide(), host),
    suggest: (words) => suggestionsFor(room.knowledge(), words),

    openCase: (body, who) => openCase(room, body, who),
    showCase: show,
    settlePlace: (link, body, who) => change(link, body.revision, who, placeChange(body)),
    addWords: (link, body, who) => change(link, body.revision, who, wordsChange(body)),
    answerCheck: (link, body, who) => answerCheck(room, link, body, who),
    takeBack: (link, body, who) => change(link, body.revision, who, takeBackChange(body)),
    carryOn: (link, body, who) => change(link, body.revision, who, carryOnChange()),
    changeLanguage: (link, body, who) => change(link, body.revision, who, languageChange(room, body)),
    noteCall: (link, body, who) => change(link, body.revision, who, noteChange(body)),
    similarCases: (link, who) => similarCases(room, link, who),
    async handOver(link, body, who) {
      await handOver(room, link, body, who)
      return show(link, who)
    },

    addPhoto: (link, uploadKey, read, who) => addPhoto(room, link, uploadKey, read, who),
    showPhoto: (link, photo, size) => showPhoto(room, link, photo, size),
    async removePhoto(link, photo, who) {
      await removePhoto(room, link, photo, who)
      return show(link, who)
    },
    sweepPictures: () => sweepPictures(room),

    sendDueMail: (stopped) => sendDueMail(room, stopped),
    forgetOldMail: () => forgetOldMail(room),
    showMail: () => showMail(room),
    retryMail: (mail) => retryMail(room, mail),

    nextPractice: (done) => nextPractice(room, done),
    practiceTruth: (practice) => practiceTruth(room, practice),
    listCalls: (who) => listCalls(room, who),
    closeCall: (link, who) => closeCall(room, link, who),

    listTickets: (search) => listTickets(room, search),
    showTicket: (ticket, who) => showTicket(room, ticket, who),
    takeTicket: (ticket, who) => takeTicket(room, ticket, who),
    reviewTicket: (ticket, body) => reviewTicket(room, ticket, body),
    settleTicket: (ticket, body, who) => settleTicket(room, ticket, body, who),
    amendTicket: (ticket, body, who) => amendTicket(room, ticket, body, who),
    reopenTicket: (ticket, who) => reopenTicket(room, ticket, who),
    giveBack: (ticket, who) => giveBack(room, ticket, who),
    handOn: (ticket, body, who) => handOn(room, ticket, body, who),
    listColleagues: () => listColleagues(room),
    askBack: (ticket, body, who) => askBack(room, ticket, body, who),
    sendSample: (ticket, body, who) => sendSample(room, ticket, body, who),
    recordResult: (ticket, body, who) => recordResult(room, ticket, body, who),
    noteForColleagues: (ticket, body, who) => noteForColleagues(room, ticket, body, who),
    mergeTicket: (ticket, body, who) => mergeTicket(room, ticket, body, who),
    unmergeTicket: (ticket, who) => unmergeTicket(room, ticket, who),
    linkTicket: (ticket, body, who) => linkTicket(room, ticket, body, who),
    unlinkTicket: (ticket, body, who) => unlinkTicket(room, ticket, body, who),
    followTickets: followTickets(parts.db, parts.listen, parts.report),
    countTickets: () => ticketCounts(room.db),
    reachStore: () => reachStore(room.db),
    readContact: (ticket, who) => readContact(room, ticket, who),

    weekCounts: (search) => weekCounts(room, search),
    showSeason: (search) => showSeason(room, search),
    showPlausible: (district) => showPlausible(room, district),
    showWeather: (district) => showWeather(room, district),
    showNote: (week) => showNote(room, week),
    approveNote: (body, who) => approveNote(room, body, who),
    takeBackNote: (body, who) => takeBackNote(room, body, who),
    publicNotes: () => publicNotes(room),
    showPresence: () => showPresence(room),
    setPresence: (body, who) => setPresence(room, body, who),
    showNotices: () => showNotices(room),
    seeNotice: (notice, who) => seeNotice(room, notice, who),
    recountSeason: () => recountSeason(room),
    keptCases: () => keptCases(room),
    keptSuggestions: () => keptSuggestions(room),

    sealAnew: () => sealAnew(room),
    eraseDueContacts: () => eraseDueContacts(room),

    pullWeather: (addresses) => pullWeather(room, addresses),
    weatherNow: (district, asOf) => weatherNow(room, guide(), district, asOf),

    signIn: (body, address) => signIn(room, body, address),
    signOut: (token) => signOut(room, token),
    memberOfSession: (token) => memberOfSession(room, token),
    showMe: (who) => showMe(room, who),
    lookAtInvitation: (body) => lookAtInvitation(room, body),
    join: (body) => join(room, body),
    changePassword: (who, body, session) => changePassword(room, who, body, session),
    signOutEverywhere: (who) => signOutEverywhere(room, who),
    startCodes: (who, body, address) => startCodes(room, who, body, address),
    confirmCodes: (who, body) => confirmCodes(room, who, body),
    stopCodes: (who, body, address) => stopCodes(room, who, body, address),

    showPeople: () => showPeople(room),
    invite: (body, who) => invite(room, body, who),
    async withdrawInvitation(name) {
      await withdrawInvitation(room, name)
      return showPeople(room)
    },
    changeRole: (body, who) => changeRole(room, body, who),
    endAccount: (name, who) => endAccount(room, name, who),
    signOutPerson: (name, who) => signOutPerson(room, name, who),
    forgetCodesOf: (name, who) => forgetCodesOf(room, name, who),
    helplineSettings: () => helplineSettings(room.db),
    decideSettings: (settings, who) => decideSettings(room, settings, who),
    addPerson: (name, role) => addPerson(room, name, role),
    removePerson: (name) => removePerson(room, name),
    addDemonstrationPeople: () => addDemonstrationPeople(room),
  }
}
