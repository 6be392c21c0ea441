import { useEffect, useMemo, useState } from 'preact/hooks'
import type { CaseView } from '../../../shared/index.js'
import type { CaseService } from '../wire/case-service.js'
import { createPhotoUploads, onTheWay, type PhotoUploads } from './photo-uploads.js'

/** The photos on their way to a case, followed as they go. They stop only when the sheet itself leaves the screen; leaving the page with some under way is asked about. */
export function usePhotoUploads(service: CaseService, link: string, onView: (view: CaseView) => void): PhotoUploads {
  const photos = useMemo(() => createPhotoUploads(service, link, onView), [service, link, onView])
  const [, draw] = useState(0)
  useEffect(() => {
    const unwatch = photos.watch(() => draw(count => count + 1))
    const hold = (event: BeforeUnloadEvent) => { if (onTheWay(photos.uploads()).underWay > 0) event.preventDefault() }
    window.addEventListener('beforeunload', hold)
    return () => { window.removeEventListener('beforeunload', hold); unwatch(); photos.stop() }
  }, [photos])
  return photos
}
