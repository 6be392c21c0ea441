import { z } from 'zod'

export const Role = z.enum(['volunteer', 'specialist', 'administrator']).meta({ id: 'Role' })

const Name = z.string().trim().min(1).max(80)

/** Shortest password taken when one is chosen. */
export const MIN_PASSWORD = 12
const ChosenPassword = z.string().min(MIN_PASSWORD, `at least ${MIN_PASSWORD} characters`).max(128)

/** Six digits of a one-time code, or a recovery code. */
const Code = z.string().trim().min(6).max(40)

export const SignIn = z.strictObject({
  name: Name,
  password: z.string().min(1).max(200),
  /** Asked for with the fault CODE_NEEDED when the account has one-time codes. A recovery code does as well. */
  code: Code.optional(),
}).meta({ id: 'SignIn' })

export const Person = z.object({ name: z.string(), role: Role }).meta({ id: 'Person' })

/** The signed-in person. */
export const Me = Person.extend({
  /** 'to be set up': the role needs one-time codes, and until they are set up nothing else may be done. */
  codes: z.enum(['off', 'on', 'to be set up']),
  /** Recovery codes not used yet. */
  recoveryCodesLeft: z.number().int(),
}).meta({ id: 'Me' })

export const PersonRow = Person.extend({
  madeAt: z.string(), codes: z.boolean(), sessions: z.number().int(),
}).meta({ id: 'PersonRow' })

/** An invitation not used yet. Its link is shown once, when it is made. */
export const InvitationRow = Person.extend({ by: z.string(), madeAt: z.string(), expiresAt: z.string() }).meta({ id: 'InvitationRow' })

export const PeopleList = z.object({ people: z.array(PersonRow), invitations: z.array(InvitationRow) }).meta({ id: 'PeopleList' })

export const Invite = z.strictObject({
  name: Name, role: Role,
  /** Where the link is sent besides, where the service sends mail. It is kept nowhere else. */
  email: z.email().max(254).optional(),
}).meta({ id: 'Invite' })
/** The link that the invited person opens: the page /join, with the token behind '#', where no server sees it. */
export const Invitation = Person.extend({ token: z.string(), link: z.string(), expiresAt: z.string(), mailed: z.boolean() }).meta({ id: 'Invitation' })

export const InvitationToken = z.string().regex(/^[A-Za-z0-9_-]{43}$/)
export const LookAtInvitation = z.strictObject({ token: InvitationToken }).meta({ id: 'LookAtInvitation' })
export const InvitationView = Person.extend({ expiresAt: z.string() }).meta({ id: 'InvitationView' })
export const Join = z.strictObject({ token: InvitationToken, password: ChosenPassword }).meta({ id: 'Join' })

export const OnePerson = z.strictObject({ name: Name }).meta({ id: 'OnePerson' })
export const ChangeRole = z.strictObject({ name: Name, role: Role }).meta({ id: 'ChangeRole' })
export const ChangePassword = z.strictObject({ current: z.string().min(1).max(200), next: ChosenPassword }).meta({ id: 'ChangePassword' })

/** Asked again before one-time codes are begun or stopped. */
export const ConfirmPassword = z.strictObject({ password: z.string().min(1).max(200) }).meta({ id: 'ConfirmPassword' })
/** What an app for one-time codes needs (RFC 6238): the secret in base32, and the same as an otpauth:// address for a QR drawing. */
export const CodeSecret = z.object({ secret: z.string(), address: z.string() }).meta({ id: 'CodeSecret' })
export const ConfirmCode = z.strictObject({ code: Code }).meta({ id: 'ConfirmCode' })
/** Each lets in once without the app; shown only now. */
export const RecoveryCodes = z.object({ codes: z.array(z.string()) }).meta({ id: 'RecoveryCodes' })

/** What an administrator decides for the whole helpline. */
export const HelplineSettings = z.strictObject({
  /** Roles that must use one-time codes. */
  codesFor: z.array(Role).max(3),
  /** Days after settling when contact details are erased; null takes the region's own. */
  eraseContactAfterDays: z.number().int().min(1).max(3650).nullable(),
}).meta({ id: 'HelplineSettings' })

/** Who a browser is signed in as; being signed in as nobody is no error. */
export const SessionView = z.object({ person: Me.nullable() }).meta({ id: 'SessionView' })

export type Role = z.infer<typeof Role>
export type SignIn = z.infer<typeof SignIn>
export type SessionView = z.infer<typeof SessionView>
export type Person = z.infer<typeof Person>
export type Me = z.infer<typeof Me>
export type PeopleList = z.infer<typeof PeopleList>
export type Invite = z.infer<typeof Invite>
export type Invitation = z.infer<typeof Invitation>
export type InvitationView = z.infer<typeof InvitationView>
export type LookAtInvitation = z.infer<typeof LookAtInvitation>
export type Join = z.infer<typeof Join>
export type OnePerson = z.infer<typeof OnePerson>
export type ChangeRole = z.infer<typeof ChangeRole>
export type ChangePassword = z.infer<typeof ChangePassword>
export type ConfirmPassword = z.infer<typeof ConfirmPassword>
export type CodeSecret = z.infer<typeof CodeSecret>
export type ConfirmCode = z.infer<typeof ConfirmCode>
export type RecoveryCodes = z.infer<typeof RecoveryCodes>
export type HelplineSettings = z.infer<typeof HelplineSettings>
