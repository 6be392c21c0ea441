import { openAskAddresses } from './ask/ask-pages.js'
import { pageAddresses } from './pages.js'
import { seeingAddresses } from './seeing/seeing-pages.js'
import { routes } from './routes/index.js'

/** What stands in the log where an address held something that is nobody else's business. */
const HIDDEN = ':hidden'

/** The fixed words of our own addresses; every other part could be a secret or a person's words. */
const FIXED = new Set(['', 'metrics', ...[...routes.map(({ path }) => path), ...pageAddresses, ...openAskAddresses, ...seeingAddresses]
  .flatMap((path) => path.split('/')).filter((part) => !part.startsWith(':'))])

/** Numbers of tickets, letters and photos; a link or an upload key is longer. */
const NUMBER = /^[0-9]{1,12}$/

/**
 * An address as it may be logged: without its query, and with every part that is not a fixed word of ours or a
 * ticket's number replaced. A case's link opens the case, so it must never reach a log.
 */
export function hiddenAddress(address: string): string {
  const [path = ''] = address.split(/[?#]/, 1)
  return path.split('/').map((part) => (FIXED.has(part) || NUMBER.test(part) ? part : HIDDEN)).join('/')
}
