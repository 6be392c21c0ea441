import { ChangeRole, HelplineSettings, Invitation, Invite, OnePerson, PeopleList } from '../../../shared/index.js'
import { defineMemberRoute, defineRoute, type Route } from '../route.js'

/** People and settings, for administrators. Every change of people answers with everyone as they are afterwards. */
export const administrationRoutes: readonly Route[] = [
  defineRoute('GET', '/api/people', {
    summary: 'Everyone who may sign in, and everyone invited.',
    reply: PeopleList,
    handle: ({ desk }) => desk.showPeople(),
  }),
  defineMemberRoute('POST', '/api/people/invite', {
    summary: 'Invites somebody by a link that works once, within a week. It is shown only now.',
    body: Invite, reply: Invitation, status: 201,
    handle: ({ desk, body, member }) => desk.invite(body, member),
  }),
  defineRoute('POST', '/api/people/withdraw-invitation', {
    summary: 'Withdraws the open invitation to a name.',
    body: OnePerson, reply: PeopleList,
    handle: ({ desk, body }) => desk.withdrawInvitation(body.name),
  }),
  defineMemberRoute('POST', '/api/people/role', {
    summary: 'Gives a person another role; their sessions end.',
    body: ChangeRole, reply: PeopleList,
    handle: ({ desk, body, member }) => desk.changeRole(body, member),
  }),
  defineMemberRoute('POST', '/api/people/remove', {
    summary: 'Ends an account and its sessions; the tickets the person had wait again.',
    body: OnePerson, reply: PeopleList,
    handle: ({ desk, body, member }) => desk.endAccount(body.name, member),
  }),
  defineMemberRoute('POST', '/api/people/sign-out', {
    summary: 'Ends every session of a person.',
    body: OnePerson, reply: PeopleList,
    handle: ({ desk, body, member }) => desk.signOutPerson(body.name, member),
  }),
  defineMemberRoute('POST', '/api/people/forget-codes', {
    summary: 'Forgets the one-time codes of somebody who has lost their app; their sessions end.',
    body: OnePerson, reply: PeopleList,
    handle: ({ desk, body, member }) => desk.forgetCodesOf(body.name, member),
  }),
  defineRoute('GET', '/api/settings', {
    summary: 'What administrators have decided for the helpline.',
    reply: HelplineSettings,
    handle: ({ desk }) => desk.helplineSettings(),
  }),
  defineMemberRoute('POST', '/api/settings', {
    summary: 'Decides anew; the decisions before are kept.',
    body: HelplineSettings, reply: HelplineSettings,
    handle: ({ desk, body, member }) => desk.decideSettings(body, member),
  }),
]
