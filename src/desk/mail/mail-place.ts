import type { Mailer } from '../../mail/index.js'

/** How the desk sends mail. */
export interface MailPlace {
  readonly mailer: Mailer
  /** Where links in letters begin, without a slash at the end. */
  readonly publicUrl: string
}
