import { Person, SignIn } from '../../../shared/index.js'
import { defineRoute, type Route, signedIn } from '../route.js'

/** Signing in and out. */
export const peopleRoutes: readonly Route[] = [
  defineRoute('POST', '/api/sign-in', {
    summary: 'Signs a person in and sets the session cookie.',
    body: SignIn, reply: Person, limit: 'sign in',
    async handle({ desk, body, address, cookie }) {
      const { member, token, expiresAt } = await desk.signIn(body, address)
      cookie.give(token, expiresAt)
      return { name: member.name, role: member.role }
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
  defineRoute('GET', '/api/me', {
    summary: 'Who is signed in.',
    reply: Person,
    handle(asked) {
      const { name, role } = signedIn(asked)
      return { name, role }
    },
  }),
]
