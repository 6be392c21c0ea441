import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import type { Logger } from 'pino'
import { createDesk, type MailPlace, type NewAccount } from '../desk/index.js'
import type { GuideKeeping } from '../guide/index.js'
import { openMailer } from '../mail/index.js'
import { folderHome, openBucketHome, type PhotoHome, sweepUnfinished } from '../photos/index.js'
import { openStore } from '../store/index.js'
import { buildApp } from './build-app.js'
import { contactKeys } from './contact-keys.js'
import { keepDuties } from './duties.js'
import { dutiesOf } from './duty-list.js'
import { whyNotFitForProduction } from './fit-for-production.js'
import { liveStreams } from './live-streams.js'
import { listen } from './listen.js'
import { keepSendingMail } from './mail-rounds.js'
import { measureService } from './metrics.js'
import { sharedCounter } from './shared-counter.js'
import type { Settings } from './settings.js'
import { followGuide } from './sound-guide.js'

/** What the whole service can be given besides its settings. */
export interface StartOptions {
  /** Folder of the built screens. */
  readonly webDir: string
  /** Where compiled guides are kept from one start to the next; null to compile at every start. */
  readonly guideKeeping: GuideKeeping | null
  /** The present time; the machine's clock when left out. */
  readonly clock?: () => Date
}

/** The service, running. */
export interface RunningService {
  readonly url: string
  /** Accounts made at this start, with their passwords: shown once, then known to nobody else. */
  readonly newAccounts: readonly NewAccount[]
  /** Finishes what is under way, then closes the port, the guide and the store. */
  stop(): Promise<void>
}

/**
 * Starts everything: guide, store, desk, app and port. Whatever was opened is closed again when a later part fails. In
 * a demonstration region a store without people gets one account a role.
 */
export async function startService(
  settings: Settings, log: Logger, { webDir, guideKeeping, clock = () => new Date() }: StartOptions,
): Promise<RunningService> {
  const opened: (() => Promise<void>)[] = []
  const closeAll = async (): Promise<void> => {
    for (const close of opened.splice(0).reverse()) await close()
  }
  try {
    const guide = await followGuide(settings.trees, guideKeeping, clock, log, settings.production ? whyNotFitForProduction : () => null)
    opened.push(guide.stop)
    const { home, databaseUrl, connections } = settings
    const store = await openStore({
      home, databaseUrl, connections, onLost: (fault) => { log.warn({ err: fault }, 'a connection to the store was lost') },
    })
    opened.push(store.close)

    const keys = await contactKeys(settings)
    const photos = await openPhotos(settings)
    opened.push(photos.close)
    const desk = createDesk({
      db: store.db, listen: store.listen, guide: guide.current, photos: photos.home, mail: mailPlace(settings), clock,
      randomBytes: (count) => randomBytes(count), keys, report: (fault, what) => { log.error({ err: fault }, what) },
    })
    await desk.sealAnew()
    const newAccounts = guide.current().region.demonstration ? await desk.addDemonstrationPeople() : []

    opened.push(keepDuties(dutiesOf(desk, settings.weather), store, clock, log))
    const streams = liveStreams()
    const metrics = measureService({ desk, countStreams: streams.count, token: settings.metricsToken })
    const counterOf = sharedCounter(store, clock)
    const port = await listen(buildApp({ desk, log, settings, webDir, streams, guideState: guide.state, metrics, counterOf }), settings)
    opened.push(port.close, () => { streams.endAll(); return Promise.resolve() })
    opened.push(keepSendingMail(desk, log).stop)
    log.info({ url: port.url, guide: guide.current().hash }, 'the service is up')
    return { url: port.url, newAccounts, stop: closeAll }
  } catch (fault) {
    await closeAll()
    throw fault
  }
}

/** An upload is over long before this; what it left unfinished by then stays so. */
const UNFINISHED_MS = 3_600_000

async function openPhotos({ photoBucket, home }: Settings): Promise<{ home: PhotoHome; close(): Promise<void> }> {
  if (photoBucket !== null) {
    const bucket = await openBucketHome(photoBucket)
    return { home: bucket, close: async () => { bucket.close() } }
  }
  const folder = join(home, 'photos')
  await sweepUnfinished(folder, new Date(Date.now() - UNFINISHED_MS))
  return { home: folderHome(folder), close: async () => undefined }
}

function mailPlace({ mail }: Settings): MailPlace | null {
  return mail === null ? null : { mailer: openMailer(mail), publicUrl: mail.publicUrl }
}
