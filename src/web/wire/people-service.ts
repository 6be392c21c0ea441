import type {
  ChangePassword, ChangeRole, CodeSecret, ConfirmCode, ConfirmPassword, HelplineSettings, Invitation, InvitationView, Invite, Join, Me,
  OnePerson, PeopleList, RecoveryCodes,
} from '../../../shared/index.js'
import type { Reply } from './reply.js'
import type { Sender } from './sender.js'

/** What is done to one person, by the last part of its address; each answers with everyone as they are afterwards. */
export interface PersonChangeBodies {
  'withdraw-invitation': OnePerson
  'role': ChangeRole
  'remove': OnePerson
  'sign-out': OnePerson
  'forget-codes': OnePerson
}

/** One's own account, invitations, and the people of the helpline. */
export interface PeopleService {
  lookAtInvitation(token: string): Promise<Reply<InvitationView>>
  join(body: Join): Promise<Reply<Me>>
  changePassword(body: ChangePassword): Promise<Reply<Me>>
  signOutEverywhere(): Promise<Reply<undefined>>
  startCodes(body: ConfirmPassword): Promise<Reply<CodeSecret>>
  confirmCode(body: ConfirmCode): Promise<Reply<RecoveryCodes>>
  stopCodes(body: ConfirmPassword): Promise<Reply<Me>>
  people(): Promise<Reply<PeopleList>>
  invite(body: Invite): Promise<Reply<Invitation>>
  changePerson<Path extends keyof PersonChangeBodies>(path: Path, body: PersonChangeBodies[Path]): Promise<Reply<PeopleList>>
  settings(): Promise<Reply<HelplineSettings>>
  decideSettings(body: HelplineSettings): Promise<Reply<HelplineSettings>>
}

/** The people's routes as functions. */
export function createPeopleService({ get, post }: Sender): PeopleService {
  return {
    lookAtInvitation: token => post('/api/invitation', { token }),
    join: body => post('/api/join', body),
    changePassword: body => post('/api/me/password', body),
    signOutEverywhere: () => post('/api/me/sign-out-everywhere'),
    startCodes: body => post('/api/me/codes/start', body),
    confirmCode: body => post('/api/me/codes/confirm', body),
    stopCodes: body => post('/api/me/codes/stop', body),
    people: () => get('/api/people'),
    invite: body => post('/api/people/invite', body),
    changePerson: (path, body) => post(`/api/people/${path}`, body),
    settings: () => get('/api/settings'),
    decideSettings: body => post('/api/settings', body),
  }
}
