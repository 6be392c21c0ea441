/** What came of one try. `why` is for the people of the helpline and never holds an address. */
export type SendOutcome =
  | { readonly kind: 'sent' }
  /** Worth trying again. */
  | { readonly kind: 'later'; readonly why: string }
  /** The server will never take this letter. */
  | { readonly kind: 'never'; readonly why: string }

/**
 * What a fault of sending means. By the first digit of the server's reply (RFC 5321, section 4.2.1): 4 is for now, 5
 * for good. A refused sign-in is for now, since it is our setting that is wrong and not the letter; so is everything
 * that broke off before a reply.
 */
export function outcomeOfFault(fault: unknown): SendOutcome {
  const { code, responseCode, response } = smtpFault(fault)
  if (code === 'EAUTH') return { kind: 'later', why: 'The mail server refused our sign-in. Check FRONDLINE_SMTP_URL.' }
  if (code === 'ETLS') return { kind: 'later', why: 'No safe connection to the mail server could be made.' }
  if (responseCode === null) return { kind: 'later', why: 'The connection to the mail server was lost or could not be made.' }
  const reply = [responseCode, enhancedCode(response)].filter((part) => part !== null).join(' ')
  return responseCode >= 500
    ? { kind: 'never', why: `The mail server refused the letter for good (${reply}).` }
    : { kind: 'later', why: `The mail server did not take the letter for now (${reply}).` }
}

/** RFC 3463. The words after it are left out: servers repeat the address in them. */
function enhancedCode(response: string): string | null {
  return /^[245]\d\d[ -]([245]\.\d{1,3}\.\d{1,3})\b/.exec(response)?.[1] ?? null
}

function smtpFault(fault: unknown): { code: string; responseCode: number | null; response: string } {
  if (!(fault instanceof Error)) return { code: '', responseCode: null, response: '' }
  return {
    code: 'code' in fault && typeof fault.code === 'string' ? fault.code : '',
    responseCode: 'responseCode' in fault && typeof fault.responseCode === 'number' ? fault.responseCode : null,
    response: 'response' in fault && typeof fault.response === 'string' ? fault.response : '',
  }
}
