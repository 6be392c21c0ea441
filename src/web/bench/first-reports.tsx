import { useEffect, useState } from 'preact/hooks'
import type { WatchNotices } from '../../../shared/index.js'
import { Notices } from '../season/notices.js'
import type { SeasonService } from '../wire/season-service.js'

/** How often they are looked for; they also go out by mail at once. */
const LOOK_EVERY_MS = 60_000

/** The first reports of watch problems, above the tickets, until a specialist puts them aside; nothing while there are none. */
export function FirstReports({ service }: { readonly service: Pick<SeasonService, 'watchNotices' | 'putNoticeAside'> }) {
  const [notices, setNotices] = useState<WatchNotices | null>(null)
  useEffect(() => {
    let here = true
    const look = async () => {
      const reply = await service.watchNotices()
      if (here && reply.ok) setNotices(reply.value)
    }
    void look()
    const timer = setInterval(() => { if (document.visibilityState === 'visible') void look() }, LOOK_EVERY_MS)
    return () => { here = false; clearInterval(timer) }
  }, [service])
  async function putAside(notice: string): Promise<void> {
    const reply = await service.putNoticeAside(notice)
    if (reply.ok) setNotices(reply.value)
  }
  return notices === null ? null : <Notices notices={notices.notices} mayWrite onAside={notice => void putAside(notice)} />
}
