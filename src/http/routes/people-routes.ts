import {
  ChangePassword, CodeSecret, ConfirmCode, ConfirmPassword, InvitationView, Join, LookAtInvitation, Me, RecoveryCodes, SessionView, SignIn,
} from '../../../shared/index.js'
import { defineRoute, type Passed, type Route, signedIn } from '../route.js'

/** Signing in and out, and a person's own account. */
export const peopleRoutes: readonly Route[] = [
  defineRoute('POST', '/api/sign-in', {
    summary: 'Signs a person in and sets the session cookie. CODE_NEEDED asks for a one-time code besides.',
    body: SignIn, reply: Me, limit: 'sign in',
    async handle({ desk, body, address, cookie }) {
      const { member, token, expiresAt } = await desk.signIn(body, address)
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
  defineRoute('GET', '/api/me', {
    summary: 'Who is signed in.',
    reply: Me,
    handle: (asked) => asked.desk.showMe(signedIn(asked)),
  }),
  defineRoute('POST', '/api/me/password', {
    summary: 'Changes your password. Every other session of yours ends.',
    body: ChangePassword, reply: Me, limit: 'sign in',
    async handle(asked) {
      const who = signedIn(asked)
      await asked.desk.changePassword(who, asked.body, { token: asked.cookie.token ?? '', address: asked.address })
      return asked.desk.showMe(who)
    },
  }),
  defineRoute('POST', '/api/me/sign-out-everywhere', {
    summary: 'Ends every session of yours, this one too.',
    reply: null, status: 204,
    async handle(asked) {
      await asked.desk.signOutEverywhere(signedIn(asked))
      asked.cookie.takeBack()
    },
  }),
  defineRoute('POST', '/api/me/codes/start', {
    summary: 'Begins one-time codes (RFC 6238): a secret for your app. Confirm a code to put them in force.',
    body: ConfirmPassword, reply: CodeSecret, limit: 'sign in',
    handle: (asked) => asked.desk.startCodes(signedIn(asked), asked.body, asked.address),
  }),
  defineRoute('POST', '/api/me/codes/confirm', {
    summary: 'Puts one-time codes in force. The recovery codes are shown only now.',
    body: ConfirmCode, reply: RecoveryCodes, limit: 'sign in',
    handle: (asked) => asked.desk.confirmCodes(signedIn(asked), asked.body),
  }),
  defineRoute('POST', '/api/me/codes/stop', {
    summary: 'Ends your one-time codes.',
    body: ConfirmPassword, reply: Me, limit: 'sign in',
    async handle(asked) {
      await asked.desk.stopCodes(signedIn(asked), asked.body, asked.address)
      return asked.desk.showMe(await memberNow(asked))
    },
  }),
]

/** The person anew: whether they must set up codes may just have changed. */
async function memberNow(asked: Passed) {
  return (asked.cookie.token === null ? null : await asked.desk.memberOfSession(asked.cookie.token)) ?? signedIn(asked)
}
