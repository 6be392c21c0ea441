/** What stands in the log where an address held something that is nobody else's business. */
const HIDDEN = ':hidden'

/** Parts of our own addresses that may be logged as they are; every other part could be a secret or a person's words. */
const PLAIN_PART = /^(?:|api|guide|hosts|complaints|problems|cases|case|ask|find|place|words|answers|carry-on|hand-over|notes|photos|large|small|remove|mail|retry|calls|close|tickets|take|settle|contact|give-back|hand-on|ask-back|samples|results|review|amend|reopen|merge|unmerge|link|unlink|colleagues|casebook|tree-suggestions|people|invite|invitation|withdraw-invitation|role|forget-codes|join|settings|password|codes|start|confirm|stop|sign-out-everywhere|sign-in|sign-out|me|region|suggest|openapi\.json|healthz|sheet|bench|panel\.js|assets|[0-9]{1,12})$/

/**
 * An address as it may be logged: without its query, and with every part that is not a fixed word of ours or a
 * ticket's number replaced. A case's link opens the case, so it must never reach a log.
 */
export function hiddenAddress(address: string): string {
  const [path = ''] = address.split(/[?#]/, 1)
  return path.split('/').map((part) => (PLAIN_PART.test(part) ? part : HIDDEN)).join('/')
}
