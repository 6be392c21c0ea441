import {
  ChangePassword, CodeSecret, ConfirmCode, ConfirmPassword, InvitationView, Join, LookAtInvitation, Me, RecoveryCodes, SessionView, SignIn,
} from '../../../shared/index.js'
import { defineMemberRoute, defineRoute, type Route } from '../route.js'

/** Signing in and out, and a person's own account. */
export const peopleRoutes: readonly Route[] = [
  defineRoute('POST', '/api/sign-in', {
    summary: 'Signs a person in and sets the session cookie. CODE_NEEDED asks for a one-time code besides.',
    body: SignIn, reply: Me, limit: 'sign in',
    async handle({ desk, body, address, cookie }) {
      const { member, token, expiresAt } = await desk.signIn(body, address())
      cookie.give(token, expiresAt)
      return desk.showMe(member)
    },
  }),
  defineRoute('POST', '/api/sign-out', {
    summary: 'Ends the session.',
    reply: null, status: 204,
    async handle({ desk, cookie }) {
      if (cookie.token !== null) await desk.signOut(cookie.token)
      cookie.takeBack()
    },
  }),
  defineRoute('GET', '/api/session', {
    summary: 'Who this browser is signed in as, or nobody.',
    reply: SessionView,
    handle: async ({ desk, who }) => ({ person: who === null ? null : await desk.showMe(who) }),
  }),
  defineRoute('POST', '/api/invitation', {
    summary: 'Whom an invitation is for.',
    body: LookAtInvitation, reply: InvitationView, limit: 'sign in',
    handle: ({ desk, body }) => desk.lookAtInvitation(body),
  }),
  defineRoute('POST', '/api/join', {
    summary: 'Makes the account of an invitation, with the password chosen, and signs the person in.',
    body: Join, reply: Me, limit: 'sign in',
    async handle({ desk, body, cookie }) {
      const { member, token, expiresAt } = await desk.join(body)
      cookie.give(token, expiresAt)
      return desk.showMe(member)
    },
  }),
  defineMemberRoute('GET', '/api/me', {
    summary: 'Who is signed in.',
    reply: Me,
    handle: ({ desk, member }) => desk.showMe(member),
  }),
  defineMemberRoute('POST', '/api/me/password', {
    summary: 'Changes your password. Every other session of yours ends.',
    body: ChangePassword, reply: Me, limit: 'sign in',
    async handle({ desk, body, cookie, address, member }) {
      await desk.changePassword(member, body, { token: cookie.token ?? '', address: address() })
      return desk.showMe(member)
    },
  }),
  defineMemberRoute('POST', '/api/me/sign-out-everywhere', {
    summary: 'Ends every session of yours, this one too.',
    reply: null, status: 204,
    async handle({ desk, cookie, member }) {
      await desk.signOutEverywhere(member)
      cookie.takeBack()
    },
  }),
  defineMemberRoute('POST', '/api/me/codes/start', {
    summary: 'Begins one-time codes (RFC 6238): a secret for your app. Confirm a code to put them in force.',
    body: ConfirmPassword, reply: CodeSecret, limit: 'sign in',
    handle: ({ desk, body, address, member }) => desk.startCodes(member, body, address()),
  }),
  defineMemberRoute('POST', '/api/me/codes/confirm', {
    summary: 'Puts one-time codes in force. The recovery codes are shown only now.',
    body: ConfirmCode, reply: RecoveryCodes, limit: 'sign in',
    handle: ({ desk, body, member }) => desk.confirmCodes(member, body),
  }),
  defineMemberRoute('POST', '/api/me/codes/stop', {
    summary: 'Ends your one-time codes.',
    body: ConfirmPassword, reply: Me, limit: 'sign in',
    async handle({ desk, body, address, cookie, member }) {
      await desk.stopCodes(member, body, address())
      // Anew: whether they must set up codes may just have changed.
      const memberNow = cookie.token === null ? null : await desk.memberOfSession(cookie.token)
      return desk.showMe(memberNow ?? member)
    },
  }),
]
